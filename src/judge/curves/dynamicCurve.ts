import type { LimitQuantity } from '../limits/limitQuantities.ts';
import type { LimitProvenance } from '../limits/limitTable.ts';

/** A limit that holds from a time after the event until the next point. */
export interface CurvePoint {
  /** Seconds after the event, ≥ 0. */
  readonly afterS: number;
  /** Deviation from `about` in % of nominal, signed; null: no limit from here on. */
  readonly percent: number | null;
}

/** What curves limit. */
export type CurveQuantity = Extract<LimitQuantity, 'RMS voltage' | 'frequency'>;
export const curveQuantities: readonly CurveQuantity[] = ['RMS voltage', 'frequency'];

/** How far a voltage or frequency may go, and for how long, after a step of the load or a change of source. */
export interface DynamicCurve {
  readonly standard: string;
  readonly edition: string;
  readonly clause: string;
  /** Which class or rule of the standard, as a person says it. */
  readonly name: string;
  readonly quantity: CurveQuantity;
  /** The level that deviations are taken from. */
  readonly about: 'nominal' | 'before' | 'after';
  /** Each ascending in time, the first at 0. */
  readonly upper: readonly CurvePoint[];
  readonly lower: readonly CurvePoint[];
  readonly provenance: LimitProvenance;
  /** What it is written for and what one capture can't give. */
  readonly remark: string;
}

/**
 * The corners of a limit over time, to be joined by straight lines: level, then straight to the next level.
 *
 * @param untilS - where the drawing ends, > 0.
 * @returns one list a stretch that has a limit, each at least two corners, in [seconds, percent].
 */
export function curveOutline(
  points: readonly CurvePoint[],
  untilS: number,
): readonly (readonly (readonly [afterS: number, percent: number])[])[] {
  const stretches: (readonly [number, number])[][] = [];
  let limited = false;
  points.forEach(({ afterS, percent }, i) => {
    if (afterS >= untilS) return;
    if (percent !== null) {
      const endS = Math.min(untilS, points[i + 1]?.afterS ?? untilS);
      if (!limited) stretches.push([]);
      stretches.at(-1)!.push([afterS, percent], [endS, percent]);
    }
    limited = percent !== null;
  });
  return stretches;
}
