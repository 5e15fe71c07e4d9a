/** What stands at one order and between it and the next: RMS values in U. */
export interface OrderGroups {
  readonly order: number;
  /** The order's line alone. */
  readonly rms: number;
  /** All lines nearer to this order than to another; those half-way count half. */
  readonly groupRms: number;
  /** The order's line and one on each side. */
  readonly subgroupRms: number;
  /** All lines between this order and the next. */
  readonly interharmonicGroupRms: number;
  /** The same without the lines next to either order. */
  readonly interharmonicSubgroupRms: number;
}

/**
 * Harmonic groups and subgroups, interharmonic groups and centred subgroups of one window.
 *
 * group² = ½·Y²[Nh − N/2] + Σ Y²[Nh + k], |k| < N/2, + ½·Y²[Nh + N/2]; subgroup² = Σ Y²[Nh + k], |k| ≤ 1;
 * interharmonic group² = Σ Y²[Nh + k], 1 ≤ k ≤ N − 1; centred subgroup² the same with 2 ≤ k ≤ N − 2
 *
 * @param squares - squared RMS Y² of line k, in U²; at least N·(highest + 1) lines.
 * @param cycles - N, 10 or 12.
 * @param highest - order.
 * @returns orders 1 to `highest`.
 * @see IEC 61000-4-7:2002+A1:2008, 3.2 and 5.5, and its annex A (from memory).
 */
export function orderGroups(squares: Float64Array, cycles: number, highest: number): readonly OrderGroups[] {
  if (squares.length < cycles * (highest + 1)) {
    throw new RangeError(`${squares.length} lines don't reach past order ${highest}`);
  }
  const half = cycles / 2;
  return Array.from({ length: highest }, (_, i) => {
    const order = i + 1;
    const at = cycles * order;
    const sum = (from: number, to: number): number => {
      let total = 0;
      for (let k = at + from; k <= at + to; k++) total += squares[k]!;
      return total;
    };
    const halfWay = (squares[at - half]! + squares[at + half]!) / 2;
    return {
      order,
      rms: Math.sqrt(squares[at]!),
      groupRms: Math.sqrt(halfWay + sum(1 - half, half - 1)),
      subgroupRms: Math.sqrt(sum(-1, 1)),
      interharmonicGroupRms: Math.sqrt(sum(1, cycles - 1)),
      interharmonicSubgroupRms: Math.sqrt(sum(2, cycles - 2)),
    };
  });
}
