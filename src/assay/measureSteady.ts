import { hypot } from '../base/elementary.ts';
import { MeasureError } from '../base/measureError.ts';
import { compareMeter, type MeterComparison } from '../judge/compareMeter.ts';
import { classifyWave, SINE_THD_PERCENT } from '../judge/waveform/classifyWave.ts';
import type { Waveform } from '../judge/waveform/waveform.ts';
import type { ScaleSource } from '../measure/doubt/component.ts';
import type { Instrument } from '../measure/doubt/instrument.ts';
import type { MeasuredWave } from '../measure/measuredWave.ts';
import { measureWave } from '../measure/measureWave.ts';
import { differenceComponents } from '../measure/power/differenceComponents.ts';
import { TOLD_SKEW_DOUBT_S } from '../measure/power/measurePower.ts';
import type { SupplyCourse } from '../measure/steps/supplyTimeline.ts';
import type { Capture, Channel, SampleRange } from '../read/capture.ts';
import { moments } from '../signal/statistics.ts';
import { roughOmega, steadyStretch } from './course.ts';
import { waveInput } from './directInput.ts';

interface MeasuredSteady {
  readonly measured: Measured;
  /** Undefined: the whole record. */
  readonly stretch: SampleRange | undefined;
  /** As given; null where what it follows is no supply's voltage. */
  readonly course: SupplyCourse | null;
}

/**
 * A channel measured on its longest steady stretch; on the whole record where it has none, or where nothing repeats in
 * that, or it is a fragment that is no supply's: neither what it lacks nor what it has says something of the record.
 *
 * @throws MeasureError as `measureWave` does for the whole record.
 */
export function measureSteady(
  capture: Capture,
  channel: Channel,
  instrument: Instrument,
  course: SupplyCourse | null,
  options: MeterOptions,
): MeasuredSteady {
  const stretch = steadyStretch(course, capture);
  const start = roughOmega(course, capture);
  if (stretch !== undefined) {
    const measured = orNothing(() =>
      measureWithMeter(capture, channel, instrument, { ...options, stretch, roughOmega: start }),
    );
    if (measured !== null && measured.wave.periodic !== null) {
      if (!isFragment(measured, course, channel)) return { measured, stretch, course };
      return {
        measured: measureWithMeter(capture, channel, instrument, options),
        stretch: undefined,
        course: null,
      };
    }
  }
  const measured = measureWithMeter(capture, channel, instrument, { ...options, roughOmega: start });
  return { measured, stretch: undefined, course };
}

/** Cycles from which on a wave is one, of whatever frequency and shape. */
const ANY_WAVE_CYCLES = 10;
/** Of a record: without voltage for less, what is there is no fragment of it. */
const MOSTLY_DARK = 0.5;
/** Cycles that make a wave of what swings to one side only, as half of one does. */
const ONE_SIDED_CYCLES = 5;
/** No outlet gives more, an aircraft's 400 Hz and some of a time axis's error included. */
const OUTLET_HZ = 450;
/** Of the AC RMS: with more mean than this, a few cycles are pulses to one side. */
const ONE_SIDED = 0.5;

/**
 * True for some pulses to one side, or some swings faster than any outlet's, in a record that is otherwise without
 * voltage: a burst that dies out or a signal, no supply that comes and goes.
 */
function isFragment(
  { wave: { figures } }: Measured,
  course: SupplyCourse | null,
  { samples }: Channel,
): boolean {
  if (course === null || figures.cyclesUsed >= ANY_WAVE_CYCLES) return false;
  const dark = course.dark.reduce((sum, { from, to }) => sum + to - from, 0);
  if (dark <= MOSTLY_DARK * samples.length) return false;
  const { frequencyHz, mean, acRms } = figures;
  const isFast = frequencyHz.value !== null && frequencyHz.value > OUTLET_HZ;
  const isOneSided =
    figures.cyclesUsed < ONE_SIDED_CYCLES &&
    mean.value !== null &&
    acRms.value !== null &&
    Math.abs(mean.value) > ONE_SIDED * acRms.value;
  return isFast || isOneSided;
}

function orNothing<T>(measure: () => T): T | null {
  try {
    return measure();
  } catch (error) {
    if (!(error instanceof MeasureError)) throw error;
    return null;
  }
}

interface MeterOptions {
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
function measureWithMeter(
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
