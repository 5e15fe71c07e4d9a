/** The first quartile of |x| of a standard normal. */
export const NORMAL_QUARTILE = 0.3186393639643751;

/** Values that one value shares no sample with its next: a cycle. */
const CYCLE = 2;

/**
 * Standard deviation of one value of an envelope about a straight line, in the quiet part of the record.
 *
 * σ = first quartile of |x[k − 2] − 2x[k] + x[k + 2]| / (0.3186·√6)
 *
 * @param values - shape N, one each half cycle. Not changed.
 * @returns in the unit of the values, ≥ 0; 0 for fewer than five.
 * @remarks Second differences over two cycles leave nothing of a drift and little of a slow recovery.
 */
export function straightScatter(values: Float64Array): number {
  if (values.length <= 2 * CYCLE) return 0;
  const bends = values
    .slice(2 * CYCLE)
    .map((value, i) => Math.abs(value - 2 * values[i + CYCLE]! + values[i]!));
  // √6: the norm of the weights 1, −2, 1.
  return quantile(bends, 0.25) / (NORMAL_QUARTILE * Math.sqrt(6));
}

/** The value that a share of the sorted values lies below, without interpolation. */
export function quantile(values: Float64Array, share: number): number {
  const sorted = Float64Array.from(values).sort();
  return sorted[Math.floor(share * (sorted.length - 1))]!;
}
