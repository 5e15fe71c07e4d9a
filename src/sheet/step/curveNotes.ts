import { secondsText } from '../numbers/secondsText.ts';
import { significantText } from '../numbers/significantText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { curveName } from './curveName.ts';
import type { StepCurve } from './stepPicture.ts';

/** How a step stands against each curve, a sentence each; from memory is said, and that a record ended early. */
export function curveNotes(curves: readonly StepCurve[]): readonly string[] {
  return curves.map(({ curve, side, worst, reachesEnd }) => {
    const percent = (value: number): string => withUnit(significantText(value, 3), '%');
    const memory = curve.provenance === 'memory' ? ', limits from memory' : '';
    const early = reachesEnd ? '' : ', as far as the record goes';
    const what = curve.quantity === 'frequency' ? 'frequency' : 'voltage';
    return `${curveName(curve)}, ${what}: ${side}${early}; nearest at ${percent(worst.percent)} of a limit of ${percent(worst.limitPercent)} after ${secondsText(worst.afterS)}${memory}. For information.`;
  });
}
