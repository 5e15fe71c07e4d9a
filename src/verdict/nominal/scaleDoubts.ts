import type { Notice } from '../../base/notice.ts';
import { ROUND_RATIOS } from '../meter/roundRatioNear.ts';
import { inVolts } from './inVolts.ts';
import { apartRatio, VOLTAGE_REACH } from './mainsNominals.ts';

/** A proposal must land this near: the band that supplies hold by IEC 60038; 20 % would let any ratio land. */
const PROPOSAL_REACH = 1.1;
const PROPOSALS_SHOWN = 3;
/** So far from every outlet volts are doubted, whether or not a usual ratio explains them. */
const FAR_REACH = 4;

/**
 * Doubts about the volts themselves: a probe ratio not set (or set twice), or one leg of a floating outlet.
 *
 * @param rmsV - measured, positive.
 * @param candidatesV - the nominal voltages that the wave's frequency allows, or the one that was told.
 * @returns `scale.suspect`, `scale.half`, or nothing.
 * @remarks Changes nothing: a person decides.
 */
export function scaleDoubts(rmsV: number, candidatesV: readonly number[]): readonly Notice[] {
  const nearest = Math.min(...candidatesV.map((candidateV) => apartRatio(rmsV, candidateV)));
  const half = candidatesV.find(
    (candidateV) => apartRatio(2 * rmsV, candidateV) < Math.min(nearest, PROPOSAL_REACH),
  );
  if (half !== undefined) return [halfNotice(rmsV, half)];
  if (nearest <= VOLTAGE_REACH) return [];
  const proposals = probeProposals(rmsV, candidatesV);
  return proposals.length > 0 || (Number.isFinite(nearest) && nearest > FAR_REACH)
    ? [scaleNotice(rmsV, proposals)]
    : [];
}

interface Proposal {
  readonly ratio: number;
  readonly landsOnV: number;
  readonly apart: number;
}

function probeProposals(rmsV: number, candidatesV: readonly number[]): readonly Proposal[] {
  return ROUND_RATIOS.flatMap((ratio) => [ratio, 1 / ratio])
    .flatMap((ratio) =>
      candidatesV.map((landsOnV) => ({ ratio, landsOnV, apart: apartRatio(rmsV * ratio, landsOnV) })),
    )
    .filter(({ apart }) => apart <= PROPOSAL_REACH)
    .sort((a, b) => a.apart - b.apart)
    .slice(0, PROPOSALS_SHOWN);
}

function scaleNotice(rmsV: number, proposals: readonly Proposal[]): Notice {
  const ways = proposals.map(({ ratio, landsOnV }) => `--scale ${ratio} would land near ${landsOnV} V`);
  return {
    code: 'scale.suspect',
    message: `The scale looks wrong: ${inVolts(rmsV)} is no outlet voltage${ways.length === 0 ? '' : `, but ${ways.join(', ')}`}. Check the probe's ratio (--scale comes on top of any scale already set).`,
  };
}

function halfNotice(rmsV: number, wholeV: number): Notice {
  return {
    code: 'scale.half',
    message: `${inVolts(rmsV)} is about half of ${wholeV} V: one leg of a floating outlet? Measure between its two live contacts with a differential probe.`,
  };
}
