import quickselect from 'quickselect';

/**
 * The value that stands at a place when all are sorted, without sorting them: cost linear in N.
 *
 * @param values - shape N, no NaN. Put in another order: those before the place are then at most as large as it, those
 * behind at least.
 * @param place - 0 ≤ place < N.
 * @example orderStatistic(Float64Array.of(5, 1, 3), 1) // 3
 */
export function orderStatistic(values: Float64Array, place: number): number {
  // Its types know plain arrays alone; it only reads and writes elements.
  quickselect(values as ArrayLike<number> as number[], place);
  return values[place]!;
}
