import type { Figure } from '../../base/figure.ts';
import { figureParts } from './figureParts.ts';
import { noBreakSpace, withUnit } from './withUnit.ts';

/**
 * A figure in one breath: "119.8 ± 0.9 V", or "not measurable".
 *
 * @param unit - as printed after the number; empty for a ratio.
 */
export function figureText(figure: Figure, unit: string): string {
  if (figure.value === null) return 'not measurable';
  const { value, uncertainty } = figureParts(figure);
  const number = uncertainty === null ? value : `${value}${noBreakSpace}±${noBreakSpace}${uncertainty}`;
  return withUnit(number, unit);
}
