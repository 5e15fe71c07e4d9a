import { atan2, hypot } from '../../base/elementary.ts';

/** Powers of a single phase whose voltage and current need not be sines; symbols of IEEE Std 1459. */
export interface NonsinusoidalPower {
  /** P = P1 + PH; positive where power leaves the outlet. */
  readonly activeW: number;
  /** S = V·I. */
  readonly apparentVA: number;
  /** N: S² = P² + N². */
  readonly nonactiveVar: number;
  /** S1 = V1·I1. */
  readonly fundamentalApparentVA: number;
  /** P1 = V1·I1·cos θ1. */
  readonly fundamentalActiveW: number;
  /** Q1 = V1·I1·sin θ1; positive for a current that lags (inductive). */
  readonly fundamentalReactiveVar: number;
  /** SN: S² = S1² + SN². */
  readonly nonfundamentalApparentVA: number;
  /** DI = V1·IH. */
  readonly currentDistortionVar: number;
  /** DV = VH·I1. */
  readonly voltageDistortionVar: number;
  /** SH = VH·IH. */
  readonly harmonicApparentVA: number;
  /** PH = P − P1. */
  readonly harmonicActiveW: number;
  /** DH: SH² = PH² + DH². */
  readonly harmonicDistortionVar: number;
}

/**
 * Every power that follows from the fundamentals and what stands beside them.
 *
 * @see IEEE Std 1459-2010, 3.1.2: single phase, non-sinusoidal (clause number from memory).
 */
export function nonsinusoidalPower(basis: PowerBasis): NonsinusoidalPower {
  const { fundamentalV, harmonicV, inPhaseA, laggingA, harmonicA, harmonicActiveW } = basis;
  const fundamentalA = hypot(inPhaseA, laggingA);
  const activeW = fundamentalV * inPhaseA + harmonicActiveW;
  const apparentVA = hypot(fundamentalV, harmonicV) * hypot(fundamentalA, harmonicA);
  const currentDistortionVar = fundamentalV * harmonicA;
  const voltageDistortionVar = harmonicV * fundamentalA;
  const harmonicApparentVA = harmonicV * harmonicA;
  return {
    activeW,
    apparentVA,
    nonactiveVar: otherLeg(apparentVA, activeW),
    fundamentalApparentVA: fundamentalV * fundamentalA,
    fundamentalActiveW: fundamentalV * inPhaseA,
    fundamentalReactiveVar: fundamentalV * laggingA,
    nonfundamentalApparentVA: hypot(currentDistortionVar, voltageDistortionVar, harmonicApparentVA),
    currentDistortionVar,
    voltageDistortionVar,
    harmonicApparentVA,
    harmonicActiveW,
    harmonicDistortionVar: otherLeg(harmonicApparentVA, harmonicActiveW),
  };
}

/** √(hypotenuse² − leg²); 0 where rounding or noise makes the leg the longer. */
function otherLeg(hypotenuse: number, leg: number): number {
  return Math.sqrt(Math.max(0, (hypotenuse - leg) * (hypotenuse + leg)));
}

/** The six numbers that every power of a single phase is made of. */
export interface PowerBasis {
  /** V1: RMS of the voltage's fundamental. */
  readonly fundamentalV: number;
  /** VH: RMS of all else in the voltage, DC and noise included. VH² = V² − V1². */
  readonly harmonicV: number;
  /** I1·cos θ1: RMS of the part of the current's fundamental in phase with the voltage's, signed. */
  readonly inPhaseA: number;
  /** I1·sin θ1: of the part a quarter cycle behind it; positive where the current lags. */
  readonly laggingA: number;
  /** IH: RMS of all else in the current. IH² = I² − I1². */
  readonly harmonicA: number;
  /** PH: the active power of all but the fundamentals, DC included. */
  readonly harmonicActiveW: number;
}

/**
 * Mean of v·i over the last whole cycles of a stretch, W.
 *
 * @param volts - shape N; NaN marks a missing sample.
 * @param amperes - shape N, on the same time base.
 * @param span - in samples; over more than `most` cycles only the last count.
 * @returns null where no half cycle is whole, or all of them are missing.
 */
export function activePower(
  volts: Float64Array,
  amperes: Float64Array,
  span: { readonly from: number; readonly to: number },
  periodSamples: number,
  most = 50,
): number | null {
  const halves = Math.min(2 * most, Math.floor((2 * (span.to - span.from)) / periodSamples));
  // Of an odd number of half cycles the odd one is left out, unless it is all there is.
  const used = halves > 1 ? halves - (halves % 2) : halves;
  if (used < 1) return null;
  let [sum, count] = [0, 0];
  const to = Math.floor(span.to);
  for (let n = Math.max(0, Math.round(span.to - (used * periodSamples) / 2)); n < to; n++) {
    const watts = volts[n]! * amperes[n]!;
    if (Number.isNaN(watts)) continue;
    sum += watts;
    count++;
  }
  return count === 0 ? null : sum / count;
}

/**
 * θ1: by how much the current's fundamental lags the voltage's. A heater shows the skew here: θ1 / 360° periods.
 *
 * @param near - the answer is taken within half a turn of this basis' own, so that a doubt does not jump at 180°.
 * @returns degrees, positive where it lags; (−180, 180] for `near` itself.
 */
export function displacementDeg(basis: PowerBasis, near: PowerBasis = basis): number {
  const { inPhaseA, laggingA } = basis;
  const reference = atan2(near.laggingA, near.inPhaseA);
  const turn = atan2(
    laggingA * near.inPhaseA - inPhaseA * near.laggingA,
    inPhaseA * near.inPhaseA + laggingA * near.laggingA,
  );
  return (180 / Math.PI) * (reference + turn);
}
