import type { DynamicCurve } from './dynamicCurve.ts';
import { limitAt } from './limitAt.ts';

/** A quantity's deviations after an event. Arrays of one shape. */
export interface Deviations {
  /** Seconds after the event, ascending; the values whose windows reach before the event left out. */
  readonly afterS: Float64Array;
  /** From the curve's own level, in % of nominal. */
  readonly percent: Float64Array;
}

export interface CurveComparison {
  readonly side: 'inside' | 'outside';
  /** Where the quantity comes nearest to a limit, or farthest past one. */
  readonly worst: {
    readonly afterS: number;
    readonly percent: number;
    readonly limitPercent: number;
    /** Distance to the limit in % of nominal; negative outside. */
    readonly marginPercent: number;
  };
  /** False where the record ends before the curve's last limit begins: then inside is only so far. */
  readonly reachesEnd: boolean;
}

/**
 * Hold deviations against a curve.
 *
 * @returns null where the record shows nothing at any time that the curve limits.
 */
export function compareWithCurve(curve: DynamicCurve, deviations: Deviations): CurveComparison | null {
  const { afterS, percent } = deviations;
  let worst: CurveComparison['worst'] | null = null;
  for (let k = 0; k < afterS.length; k++) {
    for (const [points, sign] of [
      [curve.upper, 1],
      [curve.lower, -1],
    ] as const) {
      const limitPercent = limitAt(points, afterS[k]!);
      if (limitPercent === null) continue;
      const marginPercent = sign * (limitPercent - percent[k]!);
      if (worst === null || marginPercent < worst.marginPercent) {
        worst = { afterS: afterS[k]!, percent: percent[k]!, limitPercent, marginPercent };
      }
    }
  }
  if (worst === null) return null;
  const lastLimitS = Math.max(curve.upper.at(-1)?.afterS ?? 0, curve.lower.at(-1)?.afterS ?? 0);
  return {
    side: worst.marginPercent >= 0 ? 'inside' : 'outside',
    worst,
    reachesEnd: (afterS.at(-1) ?? 0) >= lastLimitS,
  };
}
