/**
 * How many numbers are at most a limit.
 *
 * @param ascending - sorted, equal ones allowed.
 */
export function countUpTo(ascending: readonly number[], limit: number): number {
  let [from, to] = [0, ascending.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (ascending[middle]! <= limit) from = middle + 1;
    else to = middle;
  }
  return from;
}
