import { quarterTurns } from './quarterTurns.ts';
import { cosineSeries, sineSeries } from './series.ts';

/**
 * The sine of an angle in radians, to about the last place of a double; the same on every engine, where `Math.sin`
 * may differ in that place.
 *
 * @returns NaN for what is not finite.
 */
export function sin(radians: number): number {
  if (Math.abs(radians) <= Math.PI / 4) return sineSeries(radians);
  if (!Number.isFinite(radians)) return Number.NaN;
  const { quarter, rest } = quarterTurns(radians);
  const size = quarter % 2 === 0 ? sineSeries(rest) : cosineSeries(rest);
  return quarter < 2 ? size : -size;
}
