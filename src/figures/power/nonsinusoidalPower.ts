import { hypot } from '../../base/elementary/hypot.ts';
import type { PowerBasis } from './powerBasis.ts';

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
