/** When a quantity is outside a band for the last time. */
export interface LastExit {
  /** Time at which it comes back in, on the axis of the times given. */
  readonly atS: number;
  /** How fast it comes in, per second, > 0. */
  readonly slope: number;
}

/**
 * The last return of values[from … last] into a band, on the straight line between the last value outside
 * and the one after it.
 *
 * @param timeS - shape N, ascending.
 * @param values - shape N. Not changed.
 * @returns null where none lies outside; `never` where the last one does.
 */
export function lastExit(
  timeS: Float64Array,
  values: Float64Array,
  [from, last]: readonly [number, number],
  centre: number,
  halfWidth: number,
): LastExit | null | 'never' {
  let outside = last;
  while (outside >= from && Math.abs(values[outside]! - centre) <= halfWidth) outside--;
  if (outside < from) return null;
  if (outside === last) return 'never';
  const border = centre + Math.sign(values[outside]! - centre) * halfWidth;
  const rise = values[outside + 1]! - values[outside]!;
  const time = timeS[outside + 1]! - timeS[outside]!;
  return {
    atS: timeS[outside]! + (time * (border - values[outside]!)) / rise,
    slope: Math.abs(rise) / time,
  };
}
