import { MeasureError } from '../base/measureError.ts';
import type { Capture, Channel, SampleRange } from '../read/capture.ts';
import { MINIMUM_CYCLES } from '../signal/recordParts.ts';
import { median, moments } from '../signal/statistics.ts';
import { type LocatedWave, locateWave } from './locateWave.ts';
import type { WaveInput } from './measuredWave.ts';
import type { FollowedSupply } from './steps/followSupply.ts';

/** What of a channel is measured: found before anything is fitted. */
interface SteadyWave {
  readonly input: WaveInput;
  readonly located: LocatedWave;
  /** Of the channel, in samples; undefined: the whole record. */
  readonly stretch: SampleRange | undefined;
  /** As given; null where what it follows is no supply's voltage. */
  readonly course: FollowedSupply | null;
}

/**
 * The wave on a channel's longest steady stretch; on the whole record where it has none, or where nothing repeats in
 * that, or it is a fragment that is no supply's: neither what it lacks nor what it has says something of the record.
 *
 * @throws MeasureError as `locateWave` does for the whole record.
 */
export function locateSteady(capture: Capture, channel: Channel, course: FollowedSupply | null): SteadyWave {
  const whole = waveInput(capture, channel);
  const start = roughOmega(course, capture);
  const stretch = steadyStretch(course, capture);
  if (course !== null && stretch !== undefined) {
    const input = waveInput(capture, channel, stretch);
    const located = orNothing(() => locateWave(input, start));
    if (located !== null && located.omega !== null) {
      if (!isFragment(located, located.omega, input, course, channel)) {
        return { input, located, stretch, course };
      }
      return { input: whole, located: locateWave(whole), stretch: undefined, course: null };
    }
  }
  return { input: whole, located: locateWave(whole, start), stretch: undefined, course };
}

/** A channel, or a stretch of it, as a wave to measure. @param stretch - in samples; absent: all of it. */
export function waveInput(
  { intervalS, intervalWithin, startS }: Capture,
  { samples, stepSize, coupling, quantity }: Channel,
  stretch?: SampleRange,
): WaveInput {
  return {
    samples: stretch === undefined ? samples : samples.subarray(stretch.from, stretch.to),
    intervalS,
    ...(intervalWithin === undefined ? {} : { intervalWithin }),
    startS: startS + (stretch?.from ?? 0) * intervalS,
    stepSize,
    acCoupled: coupling === 'AC',
    isSupply: quantity === 'voltage',
  };
}

/** Fewer cycles than this tell less than the whole record does, however restless. */
const LEAST_STEADY_CYCLES = 2;
/** Where the rest of the record is without voltage, as few as can be measured. */
const LEAST_LIT_CYCLES = MINIMUM_CYCLES;

/** The stretch that figures are measured on, where that is not the whole record. */
function steadyStretch(course: FollowedSupply | null, { intervalS }: Capture): SampleRange | undefined {
  if (course === null || course.steady.whole || !isRestless(course)) return undefined;
  const { from, to } = course.steady;
  const cycles = (to - from) * intervalS * course.envelope.frequencyHz[0]!;
  const least = course.dark.length > 0 ? LEAST_LIT_CYCLES : LEAST_STEADY_CYCLES;
  return cycles < least ? undefined : { from, to };
}

/** Of their own size: from the first third of the record to the last, or to the middle, less is no drift. */
const DRIFT = { rms: 0.02, frequencyHz: 0.01, current: 0.05 } as const;

/** Of the frequency: a single cycle that is off by more jumps in phase, by a twentieth of a turn. */
const JUMP_RATIO = 0.05;

/** Something steps, breaks off or jumps in phase, or one third of the record differs from another for good. */
export function isRestless(course: FollowedSupply): boolean {
  const { envelope, currentEnvelope, steady } = course;
  if (course.isUnsteady) return true;
  const third = Math.floor(envelope.rms.length / 3);
  if (third < 1) return false;
  const usual = median(envelope.frequencyHz);
  if (!steady.whole && envelope.frequencyHz.some((hertz) => Math.abs(hertz / usual - 1) > JUMP_RATIO))
    return true;
  const drifts = (values: Float64Array, ratio: number): boolean => {
    const medians = [0, 1, 2].map((i) => median(values.subarray(i * third, (i + 1) * third)));
    return Math.max(...medians) - Math.min(...medians) > ratio * Math.min(...medians);
  };
  return (
    drifts(envelope.rms, DRIFT.rms) ||
    drifts(envelope.frequencyHz, DRIFT.frequencyHz) ||
    (steady.byCurrent && currentEnvelope !== null && drifts(currentEnvelope.rms, DRIFT.current))
  );
}

/** The fundamental in the middle of a course, radians a sample; undefined where there is none. */
function roughOmega(course: FollowedSupply | null, { intervalS }: Capture): number | undefined {
  if (course === null) return undefined;
  const { frequencyHz } = course.envelope;
  return 2 * Math.PI * frequencyHz[frequencyHz.length >> 1]! * intervalS;
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
  { samples }: LocatedWave,
  omega: number,
  { intervalS, acCoupled }: WaveInput,
  { dark }: FollowedSupply,
  channel: Channel,
): boolean {
  const periodSamples = (2 * Math.PI) / omega;
  const cycles = samples.length / periodSamples;
  if (cycles >= ANY_WAVE_CYCLES) return false;
  const darkSamples = dark.reduce((sum, { from, to }) => sum + to - from, 0);
  if (darkSamples <= MOSTLY_DARK * channel.samples.length) return false;
  if (1 / (periodSamples * intervalS) > OUTLET_HZ) return true;
  // The mean of a channel whose DC was blocked tells nothing.
  if (acCoupled || cycles >= ONE_SIDED_CYCLES) return false;
  const wholeCycles = samples.subarray(0, Math.round(Math.floor(cycles) * periodSamples));
  const { mean, standardDeviation } = moments(wholeCycles);
  return Math.abs(mean) > ONE_SIDED * standardDeviation;
}

function orNothing<T>(locate: () => T): T | null {
  try {
    return locate();
  } catch (error) {
    if (!(error instanceof MeasureError)) throw error;
    return null;
  }
}
