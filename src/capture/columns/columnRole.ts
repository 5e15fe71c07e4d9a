import { nameSays } from '../head/nameSays.ts';
import type { ColumnHead } from '../head/readHead.ts';

/** What a column is for. `counts`: a channel in bare converter codes; `other`: neither volts nor amperes. */
export type ColumnRole = 'time' | 'index' | 'voltage' | 'current' | 'counts' | 'frequency' | 'other';

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
