import type { Capture, Channel, SampleRange } from '../../capture/capture.ts';
import type { MeasuredWave } from '../../figures/measuredWave.ts';
import { measureWave } from '../../figures/measureWave.ts';
import type { Instrument } from '../../figures/uncertainty/instrument.ts';
import type { ScaleSource } from '../../figures/uncertainty/scaleComponents.ts';
import type { MeterComparison, Waveform } from '../measureDocument.ts';
import { compareMeter } from '../meter/compareMeter.ts';
import { classifyWave, SINE_THD_PERCENT } from '../waveform/classifyWave.ts';
import { waveInput } from './waveInput.ts';

export interface MeterOptions {
  readonly meter?: { readonly readingV: number; readonly dcCoupled: boolean };
  readonly orders?: number;
  readonly sineThdPercent?: number;
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
    measureWave(waveInput(capture, of, options.stretch), { orders, instrument, scaleSource });
  const wave = measure(channel, 'scope and probe');
  const waveform = classifyWave(wave, sineThdPercent);
  const asFiled = { wave, waveform, scaleSource: 'scope and probe' as const, calibrated: channel };
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
  const scaleSource = follows ? 'meter' : 'scope and probe';
  const again = measure(calibrated, scaleSource);
  return { wave: again, waveform: classifyWave(again, sineThdPercent), meter, scaleSource, calibrated };
}
