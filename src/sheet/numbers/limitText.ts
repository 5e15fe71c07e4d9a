import type { Limit } from '../../verdict/measureDocument.ts';
import { significantText } from './significantText.ts';
import { withUnit } from './withUnit.ts';

/**
 * A limit in words: "at most 8 %", "at least 4 V", "207 to 253 V".
 *
 * @returns "no limit" where neither side is set.
 */
export function limitText(limit: Limit, unit: string): string {
  const { min, max } = limit;
  if (min !== undefined && max !== undefined) {
    return withUnit(`${limitNumber(min)} to ${limitNumber(max)}`, unit);
  }
  if (max !== undefined) return `at most ${withUnit(limitNumber(max), unit)}`;
  if (min !== undefined) return `at least ${withUnit(limitNumber(min), unit)}`;
  return 'no limit';
}

/** A limit's number: limits are round, or computed from a formula that nobody reads past four digits. */
function limitNumber(value: number): string {
  return significantText(value, Math.abs(value) < 10 ? 3 : 4);
}
