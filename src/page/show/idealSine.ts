import { mainFigures } from '../../entry/sections.ts';
import type { MeasuredChannel } from '../worker/requests.ts';

/** The sine of a channel's frequency, RMS without DC, mean and phase; null where it has none. */
export function idealSine({ result, zeroS }: MeasuredChannel): ((timeS: number) => number) | null {
  const figures = mainFigures(result);
  if (figures === null) return null;
  const { frequencyHz, rms, mean } = figures;
  if (frequencyHz.value === null || rms.value === null) return null;
  const middle = mean.value ?? 0;
  const peak = Math.SQRT2 * Math.sqrt(Math.max(0, rms.value ** 2 - middle ** 2));
  const omega = 2 * Math.PI * frequencyHz.value;
  return (timeS) => middle + peak * Math.sin(omega * (timeS - zeroS));
}
