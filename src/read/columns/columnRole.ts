import { nameSays } from '../head/names.ts';
import type { ColumnHead } from '../head/readHead.ts';
import { readError } from '../readErrors.ts';
import type { ColumnTrend } from './columnTrend.ts';

/** What a column is for. `counts`: a channel in bare converter codes; `other`: neither volts nor amperes. */
type ColumnRole = 'time' | 'index' | 'voltage' | 'current' | 'counts' | 'frequency' | 'other';

export interface RoledColumn extends ColumnHead {
  /** Index among the table's columns. */
  readonly index: number;
  readonly role: ColumnRole;
  /** Whether the role, and with it the unit, is only what is usual, the file naming no unit. */
  readonly isAssumed: boolean;
}

/**
 * A column's role by its head alone: its unit decides, else its name, else it is a voltage.
 *
 * @param index - place among the table's columns.
 */
export function columnRole(head: ColumnHead, index: number): RoledColumn {
  const says = nameSays(head.name);
  const named = (role: ColumnRole, isAssumed: boolean): RoledColumn => ({ ...head, index, role, isAssumed });
  if (says === 'event') return named('other', false);
  switch (head.unit?.dimension) {
    case 'time':
    case 'index':
    case 'voltage':
    case 'current':
    case 'counts':
    case 'frequency':
      return named(head.unit.dimension, false);
    case undefined:
      break;
    default:
      return named('other', false);
  }
  switch (says) {
    case 'time':
    case 'current':
      return named(says, true);
    case 'index':
    case 'frequency':
      return named(says, false);
    case 'product':
      return named('other', false);
    default:
      return named('voltage', true);
  }
}

/** The column that places the rows: by time, by number, or none, when each row is one sample on. */
export interface AxisColumn {
  readonly kind: 'time' | 'index' | 'rows';
  readonly column: RoledColumn | null;
  /** Whether its unit was told; if not, seconds are what is usual. */
  readonly isUnitAssumed: boolean;
}

/**
 * Chooses the axis: the first column of time, else one that numbers the samples, else a first column
 * without a unit that rises evenly.
 *
 * @param trends - of the table's columns, in order.
 * @param hasInterval - whether the sampling interval is known otherwise: then a "time" that counts
 * 0, 1, 2 and has no unit is a number; so is one that starts anew whenever a counter is full.
 * @throws MeasureError `file.spectrum` where the axis is a frequency.
 */
export function axisColumn(
  columns: readonly RoledColumn[],
  trends: readonly ColumnTrend[],
  hasInterval: boolean,
): AxisColumn {
  const time = columns.find((column) => column.role === 'time');
  if (time !== undefined) {
    const trend = trends[time.index]!;
    const isNumber = time.unit === null && trend.countsUp() && (hasInterval || trend.isCounter());
    return { kind: isNumber ? 'index' : 'time', column: time, isUnitAssumed: time.unit === null };
  }
  const [first] = columns;
  if (first?.role === 'frequency' && columns.length > 1)
    throw readError('file.spectrum', { axis: first.name });
  // A number that stays or wanders, as a device's does, counts nothing.
  const counts = ({ index: at }: RoledColumn): boolean => trends[at]!.countsUp() || trends[at]!.risesEvenly();
  const isNumber = (column: RoledColumn): boolean =>
    column.role === 'index'
      ? counts(column)
      : // A first column of counts that only goes up by one counts rows, and no converter's codes.
        column.role === 'counts' &&
        column === first &&
        columns.length > 1 &&
        trends[column.index]!.countsUp();
  const index = columns.find(isNumber);
  if (index !== undefined) return { kind: 'index', column: index, isUnitAssumed: false };
  if (first !== undefined && columns.length > 1 && first.unit === null && first.role !== 'other') {
    if (trends[0]!.countsUp()) return { kind: 'index', column: first, isUnitAssumed: false };
    if (trends[0]!.risesEvenly()) return { kind: 'time', column: first, isUnitAssumed: true };
  }
  return { kind: 'rows', column: null, isUnitAssumed: false };
}
