import { ticks } from 'd3';
import { log10 } from '../../base/elementary/log10.ts';

/** Values worth a tick, ascending. */
export interface AxisTicks {
  readonly values: readonly number[];
  /** That tell them apart; negative where tens or more do. */
  readonly decimals: number;
}

/**
 * Round values between two ends: multiples of 1, 2 or 5 times a power of ten.
 *
 * @param wanted - about how many: up to √2 times as many come, and one.
 */
export function axisTicks(from: number, to: number, wanted: number): AxisTicks {
  const values = ticks(from, to, wanted);
  const step = Math.abs((values[1] ?? 1) - (values[0] ?? 0));
  return { values, decimals: -Math.floor(log10(step) + 1e-9) };
}
