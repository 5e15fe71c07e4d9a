import type { StepResult } from '../../verdict/stepsDocument.ts';
import { figureText } from '../numbers/figureText.ts';
import { significantText } from '../numbers/significantText.ts';

/** A load step as rows of names and values, the curves that it is held against last. */
export function stepRows(step: StepResult): string[][] {
  const recovery = step.recovery.map(({ bandPercent, s }) => [
    `recovery into ±${bandPercent} %`,
    figureText(s, 's'),
  ]);
  const curves = step.curves.map(
    ({ standard, name, quantity, side, afterS, percent, limitPercent, provenance }) => [
      `${standard}, ${name}`,
      `${quantity} ${side}, for information: ${significantText(percent, 3)} % after ${significantText(afterS, 3)} s, limit ${significantText(limitPercent, 3)} %${provenance === 'memory' ? ' (from memory)' : ''}`,
    ],
  );
  return [
    ['at', figureText(step.atS, 's')],
    ['direction', `${step.direction}, by the ${step.directionBy}`],
    ['before', figureText(step.beforeV, 'V')],
    ['farthest', figureText(step.extremeV, 'V')],
    ['after', figureText(step.afterV, 'V')],
    ['deviation', figureText(step.deviationPercent, '% of nominal')],
    ['after, from before', figureText(step.afterPercent, '% of nominal')],
    ['overshoot on the way back', figureText(step.overshootPercent, '% of nominal')],
    ...recovery,
    [
      'frequency before, farthest, after',
      [step.beforeHz, step.extremeHz, step.afterHz].map((f) => figureText(f, 'Hz')).join(', '),
    ],
    [
      'THD before, during, after',
      [step.thdBeforePercent, step.thdDuringPercent, step.thdAfterPercent]
        .map((f) => figureText(f, '%'))
        .join(', '),
    ],
    ...curves,
  ];
}
