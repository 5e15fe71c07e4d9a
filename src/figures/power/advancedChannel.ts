import { advancedSeries } from '../../signal/advancedSeries.ts';
import { seriesAt } from '../../signal/harmonicSeries.ts';
import { storedResidual } from '../../signal/residual.ts';
import type { FittedChannel } from './fittedChannel.ts';

/**
 * A channel without its delay: what it would have shown `delaySamples` earlier.
 *
 * @param delaySamples - positive where the channel is late; need not be whole.
 * @remarks The fitted series is turned exactly; only the remainder (noise, and what lies above the orders
 * fitted) is interpolated, along straight lines, and is missing where it would come from outside the record.
 */
export function advancedChannel(channel: FittedChannel, delaySamples: number): FittedChannel {
  if (delaySamples === 0) return channel;
  const { samples, fit } = channel;
  const series = advancedSeries(fit, fit.omega * delaySamples);
  const whole = Math.floor(delaySamples);
  const share = delaySamples - whole;
  const centre = (samples.length - 1) / 2;
  const left = fit.residual.stretch(0, samples.length);
  const residual = samples.map((_, n) => {
    const before = left[n + whole] ?? Number.NaN;
    // A whole delay must not ask for the sample after the last.
    const after = share === 0 ? before : (left[n + whole + 1] ?? Number.NaN);
    return before + share * (after - before);
  });
  return {
    samples: residual.map((r, n) => (Number.isNaN(r) ? r : seriesAt(series, fit.omega * (n - centre)) + r)),
    fit: { ...fit, ...series, residual: storedResidual(residual) },
  };
}
