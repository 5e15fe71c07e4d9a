import { hypot } from '../../base/elementary/hypot.ts';
import type { Capture, Channel, SampleRange } from '../../capture/capture.ts';
import type { MeasuredWave } from '../../figures/measuredWave.ts';
import { measureWave } from '../../figures/measureWave.ts';
import { differenceComponents } from '../../figures/power/differenceComponents.ts';
import { TOLD_SKEW_DOUBT_S } from '../../figures/power/skewDoubt.ts';
import type { Instrument } from '../../figures/uncertainty/instrument.ts';
import type { ScaleSource } from '../../figures/uncertainty/scaleComponents.ts';
import { moments } from '../../signal/moments.ts';
import type { MeterComparison, Waveform } from '../measureDocument.ts';
import { compareMeter } from '../meter/compareMeter.ts';
import { classifyWave, SINE_THD_PERCENT } from '../waveform/classifyWave.ts';
import { waveInput } from './waveInput.ts';

export interface MeterOptions {
  readonly meter?: { readonly readingV: number; readonly dcCoupled: boolean };
  readonly orders?: number;
  readonly sineThdPercent?: number;
  /** Rough, radians a sample, where the course of the record has told it. */
  readonly roughOmega?: number | undefined;
  /** The part of the record to measure, in samples; absent: all of it. */
  readonly stretch?: SampleRange | undefined;
}

/** A channel measured, and what its volts are tied to. */
export interface Measured {
  readonly wave: MeasuredWave;
  readonly waveform: Waveform;
  readonly meter: MeterComparison | null;
  readonly scaleSource: ScaleSource;
  readonly calibrated: Channel;
}

/** Measure a channel, and once more with its gain tied to the meter where the meter's reading is credible. */
export function measureWithMeter(
  capture: Capture,
  channel: Channel,
  instrument: Instrument,
  options: MeterOptions,
): Measured {
  const { orders = 50, sineThdPercent = SINE_THD_PERCENT } = options;
  const measure = (of: Channel, scaleSource: ScaleSource): MeasuredWave =>
    measureWave(waveInput(capture, of, options.stretch), {
      orders,
      instrument,
      scaleSource,
      roughOmega: options.roughOmega,
    });
  const { wave, scaleSource: own } = asFiledScale(measure, channel, instrument);
  const waveform = classifyWave(wave, sineThdPercent);
  const asFiled = { wave, waveform, scaleSource: own, calibrated: channel };
  if (options.meter === undefined) return { ...asFiled, meter: null };
  const meter = compareMeter({ ...options.meter, figures: wave.figures, waveform });
  if (meter.answer !== 'calibrated') return { ...asFiled, meter };
  const { factor } = meter;
  const calibrated = {
    ...channel,
    scale: channel.scale * factor,
    samples: channel.samples.map((x) => x * factor),
    stepSize: channel.stepSize === null ? null : channel.stepSize * factor,
  };
  // Edges hold harmonics that a meter may not follow: its accuracy there is anybody's guess.
  const follows = waveform.levels === 0 || instrument.meterBandwidthHz !== null;
  const scaleSource = follows ? 'meter' : own;
  const again = measure(calibrated, scaleSource);
  return { wave: again, waveform: classifyWave(again, sineThdPercent), meter, scaleSource, calibrated };
}

/** A channel as the file has it; the difference of two channels is measured once more, with the doubt of both. */
function asFiledScale(
  measure: (of: Channel, scaleSource: ScaleSource) => MeasuredWave,
  channel: Channel,
  instrument: Instrument,
): { readonly wave: MeasuredWave; readonly scaleSource: ScaleSource } {
  const wave = measure(channel, 'scope and probe');
  const rms = wave.figures.rms.value;
  if (channel.differenceOf === undefined || rms === null || rms === 0)
    return { wave, scaleSource: 'scope and probe' };
  const [plusRms, minusRms] = channel.differenceOf.map(({ samples }) => {
    const { mean, standardDeviation } = moments(samples);
    return hypot(mean, standardDeviation);
  }) as [number, number];
  const components = differenceComponents({
    plusRms,
    minusRms,
    differenceRms: rms,
    frequencyHz: wave.figures.frequencyHz.value ?? 0,
    instrument,
    skewDoubtS: TOLD_SKEW_DOUBT_S,
  });
  const scaleSource = { components, rms };
  return { wave: measure(channel, scaleSource), scaleSource };
}
