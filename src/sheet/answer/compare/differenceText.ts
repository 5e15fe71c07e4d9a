import type { Difference } from '../../../bench/compare/compareDocument.ts';
import { figureParts } from '../../numbers/figureParts.ts';
import { withUnit } from '../../numbers/withUnit.ts';

/** "+2.00 ± 0.35 %", or a dash where there is none. */
export function differenceText({ difference, unit }: Difference): string {
  if (difference.value === null) return '–';
  const { value, uncertainty } = figureParts(difference);
  const signed = difference.value > 0 ? `+${value}` : value;
  return withUnit(uncertainty === null ? signed : `${signed} ± ${uncertainty}`, unit);
}

/** "larger", "not told apart", or why neither can be said. */
export function verdictWords({ significant, difference }: Difference): string {
  if (significant === null) return difference.value === null ? 'one is missing' : 'can’t be said';
  return significant ? 'differs' : 'not told apart';
}
