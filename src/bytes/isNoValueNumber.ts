/**
 * Whether a number stands for "no value here": 9.91E37 for not a number, 9.9E37 and −9.9E37 for infinities.
 *
 * @see SCPI-1999, volume 1, 7.2.1 (from memory): instruments that send numbers only say it so.
 */
export function isNoValueNumber(value: number): boolean {
  return value === 9.91e37 || value === 9.9e37 || value === -9.9e37;
}
