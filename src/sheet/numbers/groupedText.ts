import { noBreakSpace } from './withUnit.ts';

/**
 * A count with its thousands set apart by no-break spaces; four digits stay together.
 *
 * @param count - an integer, 0 and up.
 * @see ISO 80000-1:2009, 7.3.1: groups of three, a space and no comma or point.
 */
export function groupedText(count: number): string {
  const digits = String(count);
  return digits.length <= 4 ? digits : digits.replace(/\B(?=(\d{3})+$)/g, noBreakSpace);
}
