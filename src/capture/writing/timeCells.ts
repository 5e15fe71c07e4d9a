import { timeDecimals } from './timeDecimals.ts';
import type { WrittenCapture } from './writtenCapture.ts';

/**
 * The times of the samples as text.
 *
 * @param perSecond - units a second: 1 for s, 1000 for ms.
 */
export function timeCells({ channels, startS, intervalS }: WrittenCapture, perSecond: number): string[] {
  const decimals = timeDecimals(intervalS * perSecond);
  return Array.from(channels[0].samples, (_, i) => ((startS + i * intervalS) * perSecond).toFixed(decimals));
}
