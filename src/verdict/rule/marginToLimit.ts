import type { Limit } from '../measureDocument.ts';

/**
 * The distance from a value to the nearest limit; negative where the value lies outside.
 *
 * @param value - in the limit's unit.
 * @param limit - at least one side.
 * @throws RangeError when the limit has no side, or its min is above its max.
 * @example marginToLimit(112, { min: 114, max: 126 }) // -2
 */
export function marginToLimit(value: number, limit: Limit): number {
  const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = limit;
  if (limit.min === undefined && limit.max === undefined) throw new RangeError('a limit needs a side');
  if (!(min <= max)) throw new RangeError(`a limit from ${min} to ${max} holds nothing`);
  return Math.min(max - value, value - min);
}
