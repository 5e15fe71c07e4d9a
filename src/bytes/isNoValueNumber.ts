/** No instrument on a bench reads so much, in any unit. */
const BEYOND_ANY = 1e30;

/**
 * Whether a number stands for "no value here": 9.91E37 for not a number, 9.9E37 and −9.9E37 for infinities, and any
 * as large, such as the largest of single precision.
 *
 * @see SCPI-1999, volume 1, 7.2.1 (from memory): instruments that send numbers only say it so.
 */
export function isNoValueNumber(value: number): boolean {
  return value >= BEYOND_ANY || value <= -BEYOND_ANY;
}
