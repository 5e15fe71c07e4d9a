/**
 * A value as a converter of so many bits gives it: rounded to the nearest step (mid-tread: 0 is a code),
 * held at the rails −fullScale and fullScale − step.
 *
 * @param value - in U.
 * @param bits - whole, 1 and up.
 * @param fullScale - half the converter's range, in U; the step is 2 · fullScale / 2^bits.
 */
export function quantised(value: number, bits: number, fullScale: number): number {
  const codes = 2 ** (bits - 1);
  const code = Math.floor((value / fullScale) * codes + 0.5);
  return (Math.max(-codes, Math.min(codes - 1, code)) * fullScale) / codes;
}
