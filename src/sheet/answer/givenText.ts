import type { Figure } from '../../base/figure.ts';
import { boundText } from '../numbers/boundText.ts';
import { figureParts } from '../numbers/figureParts.ts';
import { withUnit } from '../numbers/withUnit.ts';

/**
 * A figure as people say it: "8.4 %, give or take 0.6"; "not above 0.43 %" below what can be resolved.
 *
 * @param unit - as printed; empty for a ratio.
 * @returns null where it could not be measured.
 */
export function givenText(figure: Figure, unit: string): string | null {
  if (figure.value === null) return null;
  if (figure.notAbove !== undefined) return `not above ${withUnit(boundText(figure.notAbove), unit)}`;
  const { value, uncertainty } = figureParts(figure);
  const said = withUnit(value, unit);
  return uncertainty === null ? said : `${said}, give or take ${uncertainty}`;
}
