/**
 * Moves positions apart so that neighbours keep a distance, each near where it was wished and in the same order.
 *
 * @param wished - px, any order.
 * @param distance - least, px.
 * @param bounds - lowest and highest position allowed; where they are too close, the highest gives way.
 * @returns positions in the order of `wished`.
 */
export function spreadOut(
  wished: readonly number[],
  distance: number,
  [low, high]: readonly [number, number],
): number[] {
  const order = [...wished.keys()].sort((a, b) => wished[a]! - wished[b]!);
  const spread = order.map((index) => Math.max(low, wished[index]!));
  for (let i = spread.length - 1, limit = high; i >= 0; i--, limit -= distance) {
    spread[i] = Math.min(spread[i]!, limit);
  }
  for (let i = 0, limit = low; i < spread.length; i++) {
    spread[i] = Math.max(spread[i]!, limit);
    limit = spread[i]! + distance;
  }
  const positions = [...wished];
  order.forEach((index, i) => {
    positions[index] = spread[i]!;
  });
  return positions;
}
