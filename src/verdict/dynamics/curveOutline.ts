import type { CurvePoint } from './dynamicCurve.ts';

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
