import { amountText } from '../../base/amountText.ts';
import type { Notice } from '../../base/notice.ts';

/** Converters switch at up to about this (common practice, no source). */
const FASTEST_SWITCHING_HZ = 100_000;

/**
 * Whether a ripple may be a faster one that the sample rate folded down: always possible in principle, worth
 * saying where it lies in the top tenth below half the sample rate, or where the rate is below twice what
 * converters switch at.
 */
export function aliasNotice(rippleHz: number, sampleRateHz: number): Notice | null {
  const needed = `${amountText(Math.max(2 * FASTEST_SWITCHING_HZ, 5 * sampleRateHz), 'S/s')} or more`;
  if (rippleHz > 0.45 * sampleRateHz) {
    return {
      code: 'ripple.alias',
      message: `The ripple at ${amountText(rippleHz, 'Hz')} lies close to half the sample rate, ${amountText(sampleRateHz / 2, 'Hz')}: it may be a faster one folded down, and its size can't be trusted. Save again at ${needed}.`,
    };
  }
  if (sampleRateHz >= 2 * FASTEST_SWITCHING_HZ) return null;
  return {
    code: 'ripple.alias',
    message: `At ${amountText(sampleRateHz, 'S/s')} a ripple at ${amountText(rippleHz, 'Hz')} may be one at ${amountText(sampleRateHz - rippleHz, 'Hz')} or ${amountText(sampleRateHz + rippleHz, 'Hz')} folded down. Save again at ${needed}: if it stays where it is, it is real.`,
  };
}
