import { blockMeans } from '../blockMeans.ts';
import { findFundamental } from '../findFundamental.ts';

/** Enough for 250 cycles of 80 samples; a longer record is averaged down to it for this look. */
const LOOK_LENGTH = 20_000;

/**
 * The fundamental of a record that may change on its way: of the whole where it repeats throughout, else of
 * the first half, quarter or eighth that repeats.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @returns radians a sample, good to a few per cent anywhere in the record; null where nothing repeats.
 */
export function roughFundamental(samples: Float64Array): number | null {
  const blockLength = Math.max(1, Math.floor(samples.length / LOOK_LENGTH));
  const record = blockMeans(samples, blockLength);
  for (const parts of [1, 2, 4, 8]) {
    const length = Math.floor(record.length / parts);
    for (let part = 0; part < parts && length >= 16; part++) {
      const stretch = record.subarray(part * length, (part + 1) * length);
      if (stretch.every(Number.isNaN)) continue;
      const found = findFundamental(stretch);
      if ('omega' in found) return found.omega / blockLength;
    }
  }
  return null;
}
