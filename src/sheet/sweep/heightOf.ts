import type { MeasuredFigure } from '../../base/figure.ts';

/** Where a figure stands on its axis: a mere bound at the bound, since its value is no more than noise. */
export function heightOf({ value, notAbove }: MeasuredFigure): number {
  return notAbove ?? value;
}

/** Half of its bar; none for a bound, which holds its uncertainty already. */
export function halfBarOf({ uncertainty, notAbove }: MeasuredFigure): number {
  return notAbove === undefined ? uncertainty : 0;
}
