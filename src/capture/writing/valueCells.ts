import { valueDecimals } from './valueDecimals.ts';
import type { WrittenCapture } from './writtenCapture.ts';

/** The values as text, one array a channel. */
export function valueCells({ channels }: WrittenCapture): readonly (readonly string[])[] {
  return channels.map(({ samples }) => {
    const decimals = valueDecimals(samples);
    return Array.from(samples, (value) => value.toFixed(decimals));
  });
}
