import { log2 } from '../../base/elementary/log2.ts';

/**
 * The step between neighbouring single-precision numbers at the largest stamp, where all stamps are such
 * numbers: a clock kept in single precision ticks in that step however many digits are printed.
 *
 * @param stamps - NaN where missing.
 * @param resolution - the last printed digit.
 * @returns 0 where the stamps aren't single-precision numbers.
 */
export function singlePrecisionTick(stamps: Float64Array, resolution: number): number {
  let largest = 0;
  for (const stamp of stamps) {
    if (Number.isNaN(stamp)) continue;
    if (Math.abs(Math.fround(stamp) - stamp) > resolution) return 0;
    largest = Math.max(largest, Math.abs(stamp));
  }
  // 24 bits of precision, one of them before the point.
  return largest === 0 ? 0 : 2 ** (Math.floor(log2(largest)) - 23);
}
