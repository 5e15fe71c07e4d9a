import { decide } from '../decide.ts';
import type { ToldNominal } from '../nominal/mainsNominals.ts';
import type { JudgeReason } from '../reasons.ts';
import { isSmooth } from '../waveform/kinds.ts';
import type { Waveform } from '../waveform/waveform.ts';
import type { Claim, ClaimEvidence, ClaimResult, FigureClaim, WaveformClaim } from './claim.ts';
import { type ClaimedFigure, outletQuantities } from './claimedQuantities.ts';

/**
 * Whether a claim holds on this capture, under this load.
 *
 * @returns `not judged`, with the reason, where the figure could not be measured, the wave could
 * not be classified, or the claim names a value without a tolerance.
 */
export function judgeClaim(claim: Claim, evidence: ClaimEvidence): ClaimResult {
  const judged =
    claim.quantity === 'waveform' ? judgeWaveformClaim(claim, evidence) : judgeFigureClaim(claim, evidence);
  const { noOutput } = evidence;
  return noOutput === undefined
    ? judged
    : { ...judged, outcome: 'not judged', probability: null, reason: noOutput };
}

function judgeFigureClaim(claim: FigureClaim, evidence: ClaimEvidence): ClaimResult {
  const { text, quantity, limit } = claim;
  const { rule, tooLittle } = evidence;
  const { shown, isOfWholeWave = false, examples } = outletQuantities[quantity];
  const figure = shown(evidence);
  const known = { text, quantity, value: figure.value, limit };
  if (limit === null) {
    const reason: JudgeReason = { code: 'claim.valueAlone', example: examples[0]! };
    return { ...known, outcome: 'not judged', probability: null, reason };
  }
  const { outcome, probability } = decide(figure, limit, rule);
  // What was cut off adds volts: they are too many already, or nobody knows.
  const isTooMuch =
    quantity === 'rmsV' &&
    outcome === 'fail' &&
    (figure.value ?? 0) > (limit.max ?? Number.POSITIVE_INFINITY);
  if (tooLittle !== undefined && isOfWholeWave && !isTooMuch)
    return { ...known, outcome: 'not judged', probability: null, reason: tooLittle };
  return { ...known, outcome, probability, ...(figure.value === null ? { reason: figure.reason } : {}) };
}

const DEFAULT_SINE_THD_PERCENT = 5;

/**
 * Whether the wave is of the kind that was claimed.
 *
 * @returns conditional where the kind was decided at the edge. The probability is that of the THD against
 * the threshold where the THD decided, else null: plateaus are counted, not weighed.
 */
export function judgeWaveformClaim(claim: WaveformClaim, evidence: ClaimEvidence): ClaimResult {
  const { waveform, rule } = evidence;
  const known = { text: claim.text, quantity: claim.quantity, value: waveform.kind, limit: null };
  if (waveform.kind === 'not classified') {
    const untold: JudgeReason = { code: 'wave.kindUntold' };
    const reason = waveform.reasons[0] ?? untold;
    return { ...known, outcome: 'not judged', probability: null, reason };
  }
  const plain = waveform.kind === claim.kind ? 'pass' : 'fail';
  const conditional = rule === 'guarded' && isAtEdgeOf(claim, waveform);
  return {
    ...known,
    outcome: conditional ? `conditional ${plain}` : plain,
    probability: claim.kind === 'pure sine' ? sineProbability(evidence) : null,
  };
}

/** A smooth wave at the edge wavers between pure and distorted: no doubt of that kind reaches a claim of plateaus. */
function isAtEdgeOf(claim: WaveformClaim, waveform: Waveform): boolean {
  return waveform.atTheEdge && (claim.kind === 'pure sine' || !isSmooth(waveform.kind));
}

/** Null unless the THD explains what was found, kind and edge both: the crest factor may have decided. */
function sineProbability({ figures, waveform, sineThdPercent }: ClaimEvidence): number | null {
  if (!isSmooth(waveform.kind)) return null;
  const max = sineThdPercent ?? DEFAULT_SINE_THD_PERCENT;
  const { outcome, probability } = decide(figures.thdPercent, { max }, 'guarded');
  const plain = waveform.kind === 'pure sine' ? 'pass' : 'fail';
  return outcome === (waveform.atTheEdge ? `conditional ${plain}` : plain) ? probability : null;
}

/**
 * What the claims say the outlet is meant to give: the value before a tolerance, or alone. A range or a
 * bound names none. Of several, the first.
 *
 * @example claimedNominal([parseClaim('120 V ±5 %')]) // { voltageV: 120 }
 */
export function claimedNominal(claims: readonly Claim[]): ToldNominal {
  const voltageV = firstTarget(claims, 'rmsV');
  const frequencyHz = firstTarget(claims, 'frequencyHz');
  return {
    ...(voltageV === null ? {} : { voltageV }),
    ...(frequencyHz === null ? {} : { frequencyHz }),
  };
}

function firstTarget(claims: readonly Claim[], quantity: ClaimedFigure): number | null {
  for (const claim of claims) if (claim.quantity === quantity && claim.target !== null) return claim.target;
  return null;
}
