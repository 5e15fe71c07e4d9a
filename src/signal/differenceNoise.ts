import { LONG_RECORD } from './longRecord.ts';
import { median } from './median.ts';

/** A prime, so that the places fall on all phases of a wave. */
const LOOKS = 37;
const LOOK_SAMPLES = 2 ** 10;

/**
 * White noise of a record, from the median size of its second differences: what is left of a smooth wave
 * after differencing twice is noise, and a few edges don't move a median.
 *
 * σ = median |x[n−1] − 2x[n] + x[n+1]| / (0.6745·√6)
 *
 * @param samples - shape N; NaN marks a missing sample; N ≥ 3. Not changed.
 * @returns standard deviation in the unit of the samples, ≥ 0; 0 where the record rests on single codes.
 * @remarks Low for noise that is correlated from sample to sample, high for fewer than about 50 samples a cycle.
 * A record of more than LONG_RECORD samples is looked at in 37 places, which leaves under 1 % of chance.
 */
export function differenceNoise(samples: Float64Array): number {
  const looks = samples.length > LONG_RECORD ? LOOKS : 1;
  const length = looks === 1 ? samples.length : LOOK_SAMPLES;
  const sizes = new Float64Array(looks * length);
  let count = 0;
  for (let look = 0; look < looks; look++) {
    const from = Math.floor((look * (samples.length - length)) / Math.max(1, looks - 1));
    for (let n = from + 1; n + 1 < from + length; n++) {
      const second = samples[n - 1]! - 2 * samples[n]! + samples[n + 1]!;
      if (!Number.isNaN(second)) sizes[count++] = Math.abs(second);
    }
  }
  // 0.6745: the median of |x| of a standard normal; √6: the norm of the weights 1, −2, 1.
  return count === 0 ? 0 : median(sizes.subarray(0, count)) / (0.6744897501960817 * Math.sqrt(6));
}
