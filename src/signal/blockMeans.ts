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
    let sum = 0;
    let count = 0;
    for (let n = block * blockLength; n < (block + 1) * blockLength; n++) {
      const x = samples[n]!;
      if (Number.isNaN(x)) continue;
      sum += x;
      count++;
    }
    means[block] = count === 0 ? Number.NaN : sum / count;
  }
  return means;
}
