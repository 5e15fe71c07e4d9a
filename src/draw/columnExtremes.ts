/**
 * Which samples a picture needs: where many share one of its columns, that column's first and last and the
 * lowest and highest of every curve; all of them where there are few.
 *
 * @param x - where the samples stand, ascending; shape N.
 * @param curves - values there, shape N each; NaN where there is none.
 * @param columns - how many columns x is cut into, ≥ 1.
 * @returns indices, ascending, each once; at most 2 + 2 · curves a column.
 */
export function columnExtremes(
  x: ArrayLike<number>,
  curves: readonly ArrayLike<number>[],
  columns: number,
): number[] {
  const count = x.length;
  const start = x[0] ?? 0;
  const width = (x[count - 1] ?? 0) - start;
  if (count <= columns * (2 + 2 * curves.length) || !(width > 0))
    return Array.from({ length: count }, (_, i) => i);
  const columnOf = (i: number): number => Math.floor(((x[i]! - start) / width) * columns);
  const kept: number[] = [];
  for (let from = 0, to = 0; from < count; from = to) {
    const column = columnOf(from);
    while (to < count && columnOf(to) === column) to++;
    const extremes = curves.flatMap((curve) => lowestAndHighest(curve, from, to));
    kept.push(...[...new Set([from, ...extremes, to - 1])].sort((a, b) => a - b));
  }
  return kept;
}

/** Indices; `from` where the run holds no value. */
function lowestAndHighest(curve: ArrayLike<number>, from: number, to: number): [number, number] {
  let low = from;
  let high = from;
  for (let i = from; i < to; i++) {
    const value = curve[i]!;
    if (Number.isNaN(value)) continue;
    if (!(value >= curve[low]!)) low = i;
    if (!(value <= curve[high]!)) high = i;
  }
  return [low, high];
}
