import { presentLooks } from './presentLooks.ts';

/** Values that the usual peak is told from, about. */
const LOOKS = 20_000;

/**
 * The size that all but a hundredth of |v| stays under: of the peak, also where most of the record rests at zero.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @returns in the unit of the samples; 0 where nothing is present.
 */
export function usualPeak(samples: Float64Array): number {
  const sizes = presentLooks(samples, LOOKS).map(Math.abs).sort();
  return sizes[Math.floor(0.99 * sizes.length)] ?? 0;
}
