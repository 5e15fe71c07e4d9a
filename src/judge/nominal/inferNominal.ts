import type { Figure } from '../../base/figure.ts';
import { ROUND_RATIOS } from '../../measure/meterAnswer.ts';
import type { JudgeNotice, JudgeNotices } from '../notices.ts';
import {
  apartRatio,
  isFrequencyOf,
  isWholeNominal,
  isWithin,
  mainsNominals,
  type Nominal,
  OTHER_OUTLETS,
  OTHER_REACH,
  type Outlet,
  TOLD_OUTLETS,
  TOLD_REACH,
  type ToldNominal,
  USUAL_OUTLETS,
  USUAL_REACH,
  VOLTAGE_REACH,
} from './mainsNominals.ts';

export interface InferredNominal {
  /** `inferred` is true where either half was. Null where nothing fits. */
  readonly nominal: Nominal | null;
  /** Other outlets that the wave may be meant for; empty where the nominal was told. */
  readonly others: readonly Outlet[];
  readonly notices: readonly JudgeNotice[];
}

/**
 * The voltage and frequency that the outlet is meant to give. What was told stands. What was not is inferred narrowly:
 * the frequency nearest by ratio, then at that frequency a usual outlet within ±10 %, else another within ±5 %.
 *
 * @param acRmsV - RMS without DC of the voltage channel: a wave counted from elsewhere than zero is no higher for it.
 * @param frequencyHz - of its fundamental.
 * @param told - by option, claim or plan; positive numbers.
 * @returns with notices `nominal.none`, `nominal.other`, `nominal.off`, `frequency.suspect`, `scale.suspect`,
 * `scale.half`.
 * @remarks A frequency within neither range (±15 % of 50 or 60 Hz) gives no nominal: the time axis is the likelier fault.
 */
export function inferNominal(acRmsV: Figure, frequencyHz: Figure, told: ToldNominal = {}): InferredNominal {
  const standing = isWholeNominal(told)
    ? { voltageV: told.voltageV, frequencyHz: told.frequencyHz, inferred: false }
    : null;
  if (!acRmsV.value || !frequencyHz.value)
    return { nominal: standing, others: [], notices: standing ? [] : [{ code: 'nominal.none', others: [] }] };
  const v = acRmsV.value;
  const f = frequencyHz.value;
  const [nominalHz, ...otherHz] = frequenciesFor(f, told.frequencyHz);
  if (nominalHz === undefined) {
    const expectedHz = told.frequencyHz ?? null;
    const suspect: JudgeNotice = { code: 'frequency.suspect', frequencyHz: f, expectedHz };
    return { nominal: standing, others: [], notices: [suspect] };
  }
  const voltagesFor = (hz: number): Outlet | undefined =>
    told.voltageV === undefined ? outletFor(v, hz) : { voltageV: told.voltageV, frequencyHz: hz };
  const taken = voltagesFor(nominalHz);
  const nominal = standing ?? (taken === undefined ? null : { ...taken, inferred: true });
  const isOpen = standing === null || told.ofUnit === true;
  const others = isOpen
    ? [
        ...otherHz.flatMap((hz) => voltagesFor(hz) ?? []),
        ...(told.voltageV === undefined || told.ofUnit === true ? toldOnly(v, nominalHz) : []),
      ].filter((other) => nominal === null || !isSameOutlet(other, nominal))
    : [];
  const knownV = told.voltageV === undefined ? classVoltages(nominalHz) : [told.voltageV];
  const doubts = scaleDoubts(v, knownV);
  return { nominal, others, notices: [...outletNotices(v, nominal, others, doubts), ...doubts] };
}

/** Nominal frequencies that a measured one can belong to, nearest first. */
function frequenciesFor(f: number, toldHz: number | undefined): readonly number[] {
  return (toldHz === undefined ? [50, 60] : [toldHz])
    .filter((hz) => isFrequencyOf(f, hz))
    .sort((a, b) => apartRatio(f, a) - apartRatio(f, b));
}

function outletFor(v: number, hz: number): Outlet | undefined {
  const fits = (outlets: readonly Outlet[], reach: number): Outlet | undefined =>
    outlets
      .filter(({ voltageV, frequencyHz }) => frequencyHz === hz && isWithin(v, voltageV, reach))
      .sort((a, b) => apartRatio(v, a.voltageV) - apartRatio(v, b.voltageV))[0];
  return fits(USUAL_OUTLETS, USUAL_REACH) ?? fits(OTHER_OUTLETS, OTHER_REACH);
}

function toldOnly(v: number, hz: number): readonly Outlet[] {
  return TOLD_OUTLETS.filter(
    ({ voltageV, frequencyHz }) => frequencyHz === hz && isWithin(v, voltageV, TOLD_REACH),
  );
}

function classVoltages(hz: number): readonly number[] {
  return mainsNominals.flatMap(({ voltageV, frequencyHz }) => (frequencyHz === hz ? [voltageV] : []));
}

/** From here on a voltage is off its inferred nominal enough to doubt that: half of what is still taken for it. */
const NOTABLY_OFF = 0.05;

/** What else the outlet may be meant for, and how far the wave lies off what it was taken for. */
function outletNotices(
  v: number,
  nominal: Nominal | null,
  others: readonly Outlet[],
  doubts: readonly JudgeNotice[],
): readonly JudgeNotice[] {
  if (nominal === null)
    return doubts.length > 0 && others.length === 0 ? [] : [{ code: 'nominal.none', others }];
  if (!nominal.inferred && others.length === 0) return [];
  const off = v / nominal.voltageV - 1;
  const isOff = Math.abs(off) > NOTABLY_OFF;
  const taken = { nominal, rmsV: v, off: isOff ? off : null };
  if (others.length > 0) return [{ code: 'nominal.other', ...taken, others }];
  return isOff ? [{ code: 'nominal.off', ...taken }] : [];
}

function isSameOutlet(a: Outlet, b: Outlet): boolean {
  return a.voltageV === b.voltageV && a.frequencyHz === b.frequencyHz;
}

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
function scaleDoubts(rmsV: number, candidatesV: readonly number[]): readonly JudgeNotice[] {
  const nearest = Math.min(...candidatesV.map((candidateV) => apartRatio(rmsV, candidateV)));
  const half = candidatesV.find(
    (candidateV) => apartRatio(2 * rmsV, candidateV) < Math.min(nearest, PROPOSAL_REACH),
  );
  if (half !== undefined) return [{ code: 'scale.half', rmsV, wholeV: half }];
  if (nearest <= VOLTAGE_REACH) return [];
  const proposals = probeProposals(rmsV, candidatesV);
  return proposals.length > 0 || (Number.isFinite(nearest) && nearest > FAR_REACH)
    ? [{ code: 'scale.suspect', rmsV, proposals }]
    : [];
}

type Proposals = JudgeNotices['scale.suspect']['proposals'];

function probeProposals(rmsV: number, candidatesV: readonly number[]): Proposals {
  return ROUND_RATIOS.flatMap((ratio) => [ratio, 1 / ratio])
    .flatMap((ratio) =>
      candidatesV.map((landsOnV) => ({ ratio, landsOnV, apart: apartRatio(rmsV * ratio, landsOnV) })),
    )
    .filter(({ apart }) => apart <= PROPOSAL_REACH)
    .sort((a, b) => a.apart - b.apart)
    .slice(0, PROPOSALS_SHOWN)
    .map(({ ratio, landsOnV }) => ({ ratio, landsOnV }));
}

/** Of the RMS without DC. An offset of some per cent is a scope's own; common practice, no source. */
const NOTABLE_SHARE = 0.1;

/**
 * Doubt about a voltage that rides on much DC: converter codes counted from zero, a trace that was moved with its zero, or
 * a wave that lacks half of each cycle. What is held against its limits is the RMS with DC.
 *
 * @param mean - of the voltage, V.
 * @param acRms - RMS without DC, V.
 * @returns `dc.large`; nothing where either isn't known, or the mean's own doubt might explain it.
 */
export function directDoubt(mean: Figure, acRms: Figure): readonly JudgeNotice[] {
  if (mean.value === null || !acRms.value) return [];
  const size = Math.abs(mean.value);
  if (size - mean.uncertainty <= NOTABLE_SHARE * acRms.value) return [];
  return [{ code: 'dc.large', meanV: mean.value, acRmsV: acRms.value }];
}
