/**
 * Means of neighbouring blocks: a shorter record of the same shape, for a first look.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param blockLength - samples a block, ≥ 1; a last, shorter block is dropped.
 * @returns shape ⌊N / blockLength⌋; NaN where a block holds no sample.
 * @remarks Aliases what lies above half the new rate, damped by the block's sinc: not for figures.
 * @example blockMeans(Float64Array.of(1, 3, 5, 7, 9), 2) // 2, 6
 */
export function blockMeans(samples: Float64Array, blockLength: number): Float64Array {
  const means = new Float64Array(Math.floor(samples.length / blockLength));
  for (let block = 0; block < means.length; block++) {
    means[block] = meanOf(samples, block * blockLength, (block + 1) * blockLength);
  }
  return means;
}

/** Of the present samples from ≤ n < to. */
function meanOf(samples: Float64Array, from: number, to: number): number {
  let sum = 0;
  let count = 0;
  for (let n = from; n < to; n++) {
    const x = samples[n]!;
    if (Number.isNaN(x)) continue;
    sum += x;
    count++;
  }
  return count === 0 ? Number.NaN : sum / count;
}
