/**
 * Present samples from evenly spaced places of a record: some ten thousand tell a quantile as well as millions.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param looks - places, about: all where N is less, under twice as many else.
 */
export function presentLooks(samples: Float64Array, looks: number): Float64Array {
  const stride = Math.max(1, Math.floor(samples.length / looks));
  const seen = new Float64Array(Math.ceil(samples.length / stride));
  let count = 0;
  for (let n = 0; n < samples.length; n += stride) {
    if (!Number.isNaN(samples[n]!)) seen[count++] = samples[n]!;
  }
  return seen.subarray(0, count);
}
