import { significantText, withUnit } from '../../entry/sections.ts';
import { timeText, timeUnit } from './timeUnit.ts';
import type { Span } from './viewSpan.ts';
import type { WaveColumns } from './waveColumns.ts';

/** What a picture of a wave shows, for who hears it. */
export function waveSentence(
  channel: string,
  unit: string,
  [from, to]: Span,
  { low, high }: WaveColumns,
): string {
  const present = (values: Float64Array): Float64Array => values.filter((value) => !Number.isNaN(value));
  const text = (value: number): string => withUnit(significantText(value, 4), unit);
  const [bottom, top] = [Math.min(...present(low)), Math.max(...present(high))];
  const extent = bottom <= top ? `from ${text(bottom)} to ${text(top)}` : 'no value';
  const time = timeUnit(to - from);
  return `The wave of channel ${channel} from ${timeText(from, time)} to ${timeText(to, time)}: ${extent}.`;
}
