import type { WaveColumns } from './waveColumns.ts';

/** The record's own extremes with a little room, the same for every stretch of it. */
export function rangeOf({ low, high }: WaveColumns): readonly [number, number] {
  const bottom = Math.min(...low.filter((value) => !Number.isNaN(value)));
  const top = Math.max(...high.filter((value) => !Number.isNaN(value)));
  if (!(bottom <= top)) return [-1, 1];
  const room = 0.06 * (top - bottom) || 1;
  return [bottom - room, top + room];
}
