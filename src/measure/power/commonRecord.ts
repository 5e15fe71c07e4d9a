import type { MeasureError } from '../../base/measureError.ts';
import { fitHarmonics } from '../../signal/fitHarmonics.ts';
import type { HarmonicFit } from '../../signal/harmonicFit.ts';
import { seriesAt } from '../../signal/harmonicSeries.ts';
import { timeShiftedSeries } from '../../signal/phasors.ts';
import { firstMissing, MINIMUM_CYCLES } from '../../signal/recordParts.ts';
import { storedResidual } from '../../signal/residual.ts';
import { longestStretch } from '../locateWave.ts';
import type { PeriodicWave } from '../measuredWave.ts';
import { measureError } from '../measureErrors.ts';
import type { FittedChannel, SampledChannel } from './powerFigures.ts';

/** A voltage that was measured: its frequency is the one that everything else is fitted at. */
export interface MeasuredVoltage extends SampledChannel {
  readonly periodic: PeriodicWave;
}

/** A current, and its fit where it was measured already. */
export interface PowerCurrent extends SampledChannel {
  readonly fit?: HarmonicFit;
}

/** Both channels over the stretch that both hold, fitted at the voltage's frequency to the same orders. */
interface CommonRecord {
  readonly voltage: FittedChannel;
  readonly current: FittedChannel;
  readonly startS: number;
}

/**
 * The longest stretch that neither channel breaks off for over half a cycle.
 *
 * @throws MeasureError `power.tooShort` where that is under MINIMUM_CYCLES periods.
 * @throws RangeError where the two don't stand on one time base.
 */
export function commonRecord(voltage: MeasuredVoltage, current: PowerCurrent): CommonRecord {
  const { periodic, intervalS } = voltage;
  const length = voltage.samples.length;
  const apart = (voltage.startS - current.startS) / intervalS;
  const shift = Math.round(apart);
  // A quarter of an interval at either end: the tolerance that channels are joined with.
  const drift = Math.abs(current.intervalS / intervalS - 1) * length;
  if (Math.abs(apart - shift) > 0.25 || drift > 0.25) {
    throw new RangeError('power of two channels that do not share a time base');
  }
  if (shift === 0 && isComplete(voltage.samples) && isComplete(current.samples, length)) {
    const amperes = current.samples.subarray(0, length);
    const isFitted = current.fit !== undefined && isAlike(current.fit, periodic.fit);
    return {
      voltage: { samples: voltage.samples, fit: periodic.fit },
      current: { samples: amperes, fit: isFitted ? current.fit : fitAt(amperes, periodic.fit) },
      startS: voltage.startS,
    };
  }
  const bothPresent = Float64Array.from(voltage.samples, (v, n) => v + (current.samples[n + shift] ?? NaN));
  const { from, to } = longestStretch(bothPresent, periodic.periodSamples / 2);
  if (to - from < MINIMUM_CYCLES * periodic.periodSamples) throw tooShort(to - from, periodic.periodSamples);
  const cut = (samples: Float64Array, by: number): Float64Array =>
    samples.slice(from + by, to + by).map((x, n) => (Number.isNaN(bothPresent[from + n]!) ? NaN : x));
  const volts = cut(voltage.samples, 0);
  const amperes = cut(current.samples, shift);
  const present = volts.reduce((count, x) => (Number.isNaN(x) ? count : count + 1), 0);
  const unchanged = to - from === length && present === periodic.fit.count;
  return {
    voltage: { samples: volts, fit: unchanged ? periodic.fit : fitAt(volts, periodic.fit) },
    current: { samples: amperes, fit: fitAt(amperes, periodic.fit) },
    startS: voltage.startS + from * intervalS,
  };
}

/** True where so many samples, or all of them, are there and none is missing. */
function isComplete(samples: Float64Array, length: number = samples.length): boolean {
  return samples.length >= length && firstMissing(samples.subarray(0, length)) === length;
}

/** Of as many samples, at one frequency, to as many orders: of whole records, what `fitAt` gives. */
function isAlike(a: HarmonicFit, b: HarmonicFit): boolean {
  return a.count === b.count && a.omega === b.omega && a.cosine.length === b.cosine.length;
}

function fitAt(samples: Float64Array, like: HarmonicFit): HarmonicFit {
  const orders = like.cosine.length;
  const fit = fitHarmonics(samples, { orders, omega: like.omega, frequencyKnown: true });
  if (fit === null) throw tooShort(samples.length, (2 * Math.PI) / like.omega);
  return fit;
}

function tooShort(samples: number, periodSamples: number): MeasureError {
  return measureError('power.tooShort', { periods: samples / periodSamples, least: MINIMUM_CYCLES });
}

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
  const series = timeShiftedSeries(fit, fit.omega * delaySamples);
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
