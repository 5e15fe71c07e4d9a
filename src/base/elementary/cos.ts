import { quarterTurns } from './quarterTurns.ts';
import { cosineSeries, sineSeries } from './series.ts';

/** The cosine of an angle in radians, as `sin` has it. */
export function cos(radians: number): number {
  if (Math.abs(radians) <= Math.PI / 4) return cosineSeries(radians);
  if (!Number.isFinite(radians)) return Number.NaN;
  const { quarter, rest } = quarterTurns(radians);
  const size = quarter % 2 === 0 ? cosineSeries(rest) : sineSeries(rest);
  return quarter === 0 || quarter === 3 ? size : -size;
}
