import { curveOutline } from '../../verdict/dynamics/curveOutline.ts';
import type { DynamicCurve } from '../../verdict/dynamics/dynamicCurve.ts';
import type { PicturedStep } from './stepPicture.ts';

/** Corners of a line, in seconds on the file's axis and volts. */
export type CurveLine = readonly (readonly [timeS: number, volts: number])[];

/**
 * A published curve as lines in the picture of a step: its upper and lower limits, each a line a stretch.
 *
 * @param endS - of the picture, on the file's axis.
 */
export function curveLines(
  curve: DynamicCurve,
  step: PicturedStep,
  endS: number,
  nominalV: number,
): readonly CurveLine[] {
  const atS = step.atS.value;
  const about = { nominal: nominalV, before: step.before.value, after: step.after.value }[curve.about];
  return [curve.upper, curve.lower].flatMap((points) =>
    curveOutline(points, Math.max(endS - atS, 1e-6)).map((corners) =>
      corners.map(([afterS, percent]) => [atS + afterS, about + (percent / 100) * nominalV] as const),
    ),
  );
}
