import type { CurvePoint } from './dynamicCurve.ts';

/** The limit that holds at a time after the event; null where there is none. */
export function limitAt(points: readonly CurvePoint[], afterS: number): number | null {
  return points.findLast((point) => point.afterS <= afterS)?.percent ?? null;
}
