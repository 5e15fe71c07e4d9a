import type { WaveColumns } from './waveColumns.ts';

/**
 * The sample nearest to a time.
 *
 * @param samples - as `waveColumns` gives a stretch so short that it shows the samples themselves.
 * @returns null where the file holds none there.
 */
export function nearestSample({ timeS, low }: WaveColumns, atS: number): number | null {
  let nearest = 0;
  for (let i = 1; i < timeS.length; i++) {
    if (Math.abs(timeS[i]! - atS) < Math.abs(timeS[nearest]! - atS)) nearest = i;
  }
  const value = low[nearest];
  return value === undefined || Number.isNaN(value) ? null : value;
}
