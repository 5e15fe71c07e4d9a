import type { MeasuredWave } from '../../figures/measuredWave.ts';

/**
 * Whether there is an alternating wave at all, which an outlet's limits and advice are for: neither a direct voltage, with
 * ripple or without, nor noise.
 *
 * @remarks Even a half-wave has less DC than AC; three times as much is a direct voltage with ripple.
 */
export function isAlternating({ periodic, figures }: MeasuredWave): boolean {
  if (periodic === null) return false;
  return Math.abs(figures.mean.value ?? 0) <= 3 * (figures.acRms.value ?? 0);
}
