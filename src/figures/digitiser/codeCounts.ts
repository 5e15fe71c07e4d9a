/** How often each code of a digitiser occurs between the lowest and the highest seen. */
export interface CodeCounts {
  /** Shape L ≥ 1: samples on code i; the first and the last are not 0. */
  readonly observed: Uint32Array;
  /** Shape L: samples that the model puts into the middle half of code i's cell. */
  readonly expected: Uint32Array;
}

/** More codes than any converter has. */
const MOST_CODES = 2 ** 20;

/**
 * Counts of the codes that a record holds, beside those its model asks for.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param residual - shape N: sample − model.
 * @param stepSize - q > 0, in the unit of the samples.
 * @returns null where the samples stand on no grid of that step (averaged, filtered or computed records).
 * @remarks Only the middle half of a cell is expected: near its edges the model's own error decides, and a wave
 * locked to the sample clock would ask for one code for ever and get its neighbour.
 */
export function codeCounts(
  samples: Float64Array,
  residual: Float64Array,
  stepSize: number,
): CodeCounts | null {
  let [lowest, highest, count] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  for (const x of samples) {
    if (Number.isNaN(x)) continue;
    lowest = Math.min(lowest, x);
    highest = Math.max(highest, x);
    count++;
  }
  const codes = Math.round((highest - lowest) / stepSize) + 1;
  if (!(count > 0 && codes <= MOST_CODES)) return null;
  const observed = new Uint32Array(codes);
  const expected = new Uint32Array(codes);
  let offGrid = 0;
  for (let n = 0; n < samples.length; n++) {
    const place = (samples[n]! - lowest) / stepSize;
    if (Number.isNaN(place)) continue;
    const code = Math.round(place);
    offGrid += Math.abs(place - code);
    observed[code]!++;
    const model = place - residual[n]! / stepSize;
    const asked = Math.round(model);
    if (asked >= 0 && asked < codes && Math.abs(model - asked) < 0.25) expected[asked]!++;
  }
  // Values on no grid stand a quarter of a step off in the mean; printed digits move them by less than a tenth.
  return offGrid > 0.1 * count ? null : { observed, expected };
}
