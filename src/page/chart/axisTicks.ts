/** Values worth a tick, and how many decimals tell them apart. */
export interface AxisTicks {
  readonly values: readonly number[];
  readonly decimals: number;
}

/**
 * Round values between two ends: multiples of 1, 2 or 5 times a power of ten.
 *
 * @param most - ticks, at least 2.
 */
export function axisTicks(from: number, to: number, most: number): AxisTicks {
  const rough = (to - from) / most;
  if (!(rough > 0 && Number.isFinite(rough))) return { values: [from], decimals: 0 };
  const exponent = Number(rough.toExponential().split('e')[1]);
  const unit = Number(`1e${exponent}`);
  const times = [1, 2, 5, 10].find((factor) => factor * unit >= rough * (1 - 1e-9)) ?? 10;
  const step = times * unit;
  const values: number[] = [];
  for (let k = Math.ceil(from / step - 1e-9); k * step <= to + 1e-9 * step; k++) values.push(k * step);
  return { values, decimals: Math.max(0, -(exponent + (times === 10 ? 1 : 0))) };
}
