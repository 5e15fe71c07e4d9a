import type { Figure } from '../../base/figure.ts';
import { figureText } from '../numbers/figureText.ts';

/** A figure with what it is called and its unit; empty for a ratio. */
export type NamedFigure = readonly [name: string, figure: Figure, unit: string];

/** Figures as rows: the name, then the value with uncertainty or why there is none. */
export function namedTexts(figures: readonly NamedFigure[]): string[][] {
  return figures.map(([name, figure, unit]) => [
    name,
    figure.value === null ? `not measurable: ${figure.reason}` : figureText(figure, unit),
  ]);
}
