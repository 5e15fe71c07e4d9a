import { blockMeans } from '../blockMeans.ts';
import { findFundamental } from '../findFundamental.ts';
import { LONG_RECORD } from '../longRecord.ts';

/** Enough for 250 cycles of 80 samples; a longer stretch is averaged down to it for this look. */
const LOOK_LENGTH = 20_000;
/** Of a long record a shorter look is enough, as it may be looked at in shorter stretches. */
const LONG_LOOK_LENGTH = 8192;
/** The shortest stretch looked at is a thirty-second of the record. */
const HALVINGS = 5;
/** Stretches looked at of one length. */
const LOOKS = 4;

/**
 * The fundamental of a record that may change on its way: of the whole where it repeats throughout, else of
 * a half, quarter and so on that repeats.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @returns radians a sample, good to a few per cent anywhere in the record; null where nothing repeats.
 */
export function roughFundamental(samples: Float64Array): number | null {
  const isLong = samples.length >= LONG_RECORD;
  const [lookLength, most] = isLong ? [LONG_LOOK_LENGTH, HALVINGS + 1] : [LOOK_LENGTH, HALVINGS];
  for (let halvings = 0; halvings <= most; halvings++) {
    const parts = 2 ** halvings;
    const length = Math.floor(samples.length / parts);
    const blockLength = Math.max(1, Math.floor(length / lookLength));
    const stride = Math.max(1, parts / LOOKS);
    for (let part = 0; part < parts && length >= 16; part += stride) {
      const stretch = blockMeans(samples.subarray(part * length, (part + 1) * length), blockLength);
      if (stretch.every(Number.isNaN)) continue;
      const found = findFundamental(stretch, undefined, isLong);
      if ('omega' in found) return found.omega / blockLength;
    }
  }
  return null;
}
