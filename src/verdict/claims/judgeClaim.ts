import type { Figure } from '../../base/figure.ts';
import type { ClaimResult } from '../measureDocument.ts';
import { decide } from '../rule/decide.ts';
import type { Claim, ClaimedFigure, FigureClaim } from './claim.ts';
import type { ClaimEvidence } from './claimEvidence.ts';
import { judgeWaveformClaim } from './judgeWaveformClaim.ts';

/**
 * Whether a claim holds on this capture, under this load.
 *
 * @returns `not judged`, with the reason in words, where the figure could not be measured, the wave could
 * not be classified, or the claim names a value without a tolerance.
 */
export function judgeClaim(claim: Claim, evidence: ClaimEvidence): ClaimResult {
  return claim.quantity === 'waveform'
    ? judgeWaveformClaim(claim, evidence)
    : judgeFigureClaim(claim, evidence);
}

const WITHOUT_TOLERANCE: Readonly<Record<ClaimedFigure, string>> = {
  rmsV: '120 V ±5 %',
  frequencyHz: '60 Hz ±0.5 Hz',
  thdPercent: 'THD < 3 %',
  crestFactor: 'crest 1.38..1.45',
  transferS: 'transfer < 20 ms',
};

/** What a wave that was cut off has less of, or other. */
const OF_WHOLE_WAVES: readonly ClaimedFigure[] = ['rmsV', 'thdPercent', 'crestFactor'];

function judgeFigureClaim(claim: FigureClaim, evidence: ClaimEvidence): ClaimResult {
  const { text, quantity, limit } = claim;
  const { rule, cutOff } = evidence;
  const figure = claimedFigure(quantity, evidence);
  const known = { text, quantity, value: figure.value, limit };
  if (limit === null)
    return {
      ...known,
      outcome: 'not judged',
      probability: null,
      reason: `a value alone says nothing of how far it may be off: write for example ${WITHOUT_TOLERANCE[quantity]}`,
    };
  const { outcome, probability } = decide(figure, limit, rule);
  // What was cut off adds volts: they are too many already, or nobody knows.
  const isTooMuch =
    quantity === 'rmsV' &&
    outcome === 'fail' &&
    (figure.value ?? 0) > (limit.max ?? Number.POSITIVE_INFINITY);
  if (cutOff !== undefined && OF_WHOLE_WAVES.includes(quantity) && !isTooMuch)
    return { ...known, outcome: 'not judged', probability: null, reason: cutOff };
  return { ...known, outcome, probability, ...(figure.value === null ? { reason: figure.reason } : {}) };
}

function claimedFigure(quantity: ClaimedFigure, { figures, transfersS = [] }: ClaimEvidence): Figure {
  if (quantity === 'rmsV') return figures.rms;
  if (quantity !== 'transferS') return figures[quantity];
  const [first, ...rest] = transfersS;
  // The longest one decides what the outlet can promise.
  return first === undefined
    ? { value: null, reason: 'no transfer in this capture: trigger on the moment when the mains go' }
    : rest.reduce((longest, one) => (one.value > longest.value ? one : longest), first);
}
