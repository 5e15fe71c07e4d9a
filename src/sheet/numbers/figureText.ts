import type { Figure } from '../../base/figure.ts';
import { boundText } from './boundText.ts';
import { figureParts } from './figureParts.ts';
import { noBreakSpace, withUnit } from './withUnit.ts';

/**
 * A figure in one breath: "119.8 ± 0.9 V", "not above 0.43 %" where it lies below what the instrument can
 * resolve, or "not measurable".
 *
 * @param unit - as printed after the number; empty for a ratio.
 */
export function figureText(figure: Figure, unit: string): string {
  if (figure.value === null) return 'not measurable';
  if (figure.notAbove !== undefined) return `not above ${withUnit(boundText(figure.notAbove), unit)}`;
  const { value, uncertainty } = figureParts(figure);
  const number = uncertainty === null ? value : `${value}${noBreakSpace}±${noBreakSpace}${uncertainty}`;
  return withUnit(number, unit);
}
