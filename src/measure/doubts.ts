import { log } from '../base/elementary.ts';
import type { HarmonicSeries } from '../signal/harmonicSeries.ts';
import { RUN_SAMPLES } from '../signal/recordParts.ts';
import { MANY_CODES } from './fewCodes.ts';
import type { PeriodicRecord } from './measuredWave.ts';
import type { MeasureNotice } from './notices.ts';

/**
 * What to doubt about a measured wave, and what to set on the scope to do better.
 *
 * @param ordersAsked - the highest harmonic that was asked for.
 * @returns notices, the gravest first.
 */
export function doubts(record: PeriodicRecord, ordersAsked: number): MeasureNotice[] {
  return [
    outlierNotice(record),
    clippedNotice(record),
    peakDetectNotice(record),
    fewCodesNotice(record),
    coarseNotice(record),
    fewCyclesNotice(record),
    ordersNotice(record, ordersAsked),
    fineStepsNotice(record),
    driftNotice(record),
    unsteadyNotice(record),
    acCoupledNotice(record),
  ].filter((notice) => notice !== null);
}

/** Single values that no wave explains: a damaged cell, or a disturbance shorter than three samples. */
function outlierNotice(record: PeriodicRecord): MeasureNotice | null {
  const [first, ...more] = record.periodic.outliers;
  if (first === undefined) return null;
  const atS = record.startS + first.sample * record.intervalS;
  return { code: 'value.outlier', value: first.value, atS, more: more.length };
}

/** The record holds highest and lowest values in turn. */
function peakDetectNotice({ samples }: PeriodicRecord): MeasureNotice | null {
  if (!peakDetected(samples)) return null;
  return { code: 'acquisition.pairs' };
}

/** A top cut dead flat: far more samples on the last code than on the one before it. */
function clippedNotice(record: PeriodicRecord): MeasureNotice | null {
  const { samples, stepSize, periodic } = record;
  if (periodic.levels.length > 0) return null;
  const { max, min, count } = periodic.extent;
  const step = stepSize ?? (max - min) / 256;
  // Samples on the highest code and the one below it, on the lowest and the one above.
  const ends = { topmost: 0, belowTop: 0, lowest: 0, aboveLowest: 0 };
  for (let from = 0; from < samples.length; from += RUN_SAMPLES) {
    countEnds(ends, samples.subarray(from, from + RUN_SAMPLES), max, min, step);
  }
  const { topmost, belowTop, lowest, aboveLowest } = ends;
  // The last code of an unclipped sine holds at most 2.4 times the samples of the one before it.
  const isCut = (last: number, next: number): boolean => last > 0.04 * count && last > 6 * next;
  const [top, bottom] = [isCut(topmost, belowTop), isCut(lowest, aboveLowest)];
  if (!top && !bottom) return null;
  return { code: 'wave.clipped', ends: top && bottom ? 'both' : top ? 'top' : 'bottom' };
}

/** Of a series without its mean. */
function meanSquare({ cosine, sine }: HarmonicSeries): number {
  return cosine.reduce((sum, a, k) => sum + (a ** 2 + sine[k]! ** 2) / 2, 0);
}

interface CodesAtEnds {
  topmost: number;
  belowTop: number;
  lowest: number;
  aboveLowest: number;
}

function countEnds(ends: CodesAtEnds, samples: Float64Array, max: number, min: number, step: number): void {
  const [high, low] = [max - 1.5 * step, min + 1.5 * step];
  for (let n = 0; n < samples.length; n++) {
    const x = samples[n]!;
    if (x > high) {
      if (max - x < 0.5 * step) ends.topmost++;
      else ends.belowTop++;
    }
    if (x < low) {
      if (x - min < 0.5 * step) ends.lowest++;
      else ends.aboveLowest++;
    }
  }
}

/** A sine on few codes and a staircase of as many levels are one and the same record. */
function fewCodesNotice({ stepSize, periodic }: PeriodicRecord): MeasureNotice | null {
  if (!periodic.fewCodes) return null;
  return { code: 'kind.fewCodes', values: codesSpanned(periodic, stepSize!) };
}

function codesSpanned({ extent }: PeriodicRecord['periodic'], stepSize: number): number {
  return Math.round((extent.max - extent.min) / stepSize) + 1;
}

/** Few codes between the extremes. */
function coarseNotice({ stepSize, periodic }: PeriodicRecord): MeasureNotice | null {
  if (stepSize === null || periodic.levels.length > 0) return null;
  const levels = codesSpanned(periodic, stepSize);
  return levels >= MANY_CODES ? null : { code: 'resolution.coarse', levels };
}

function fewCyclesNotice({ samples, periodic }: PeriodicRecord): MeasureNotice | null {
  const cycles = samples.length / periodic.periodSamples;
  // Three as they are said: a record of three cycles may lack a part of a sample.
  return Number(cycles.toFixed(1)) >= 3 ? null : { code: 'cycles.few', cycles, isPart: false };
}

function ordersNotice({ intervalS, periodic }: PeriodicRecord, asked: number): MeasureNotice | null {
  const used = periodic.fit.cosine.length;
  if (used >= asked) return null;
  const neededHz = (2.2 * asked) / (periodic.periodSamples * intervalS);
  return { code: 'rate.low', reached: used, asked, neededHz };
}

/**
 * Samples a cycle under which many levels blur into a smooth wave: of random staircases of up to 17 levels with
 * edges to 0.3 % of the period, none was taken for a sine above it, a few in a thousand were at 100 to 130.
 */
const FINE_STEPS_NEED = 150;

function fineStepsNotice({ intervalS, periodic }: PeriodicRecord): MeasureNotice | null {
  if (periodic.levels.length > 0 || periodic.periodSamples >= FINE_STEPS_NEED) return null;
  const neededHz = FINE_STEPS_NEED / (periodic.periodSamples * intervalS);
  return { code: 'rate.steps', samplesPerCycle: periodic.periodSamples, neededHz };
}

/** Cycle to cycle the wave grows or shrinks by more than its own scatter explains. */
function driftNotice(record: PeriodicRecord): MeasureNotice | null {
  const { gains, fit, periodSamples } = record.periodic;
  if (gains.length < 3) return null;
  const spread = Math.max(...gains) - Math.min(...gains);
  const steps = gains.slice(1).map((gain, i) => Math.abs(gain - gains[i]!));
  const scatter = steps.reduce((sum, step) => sum + step, 0) / steps.length;
  // What noise alone makes of the size of a cycle, √(Σ s²) its own, and the farthest of so many such sizes apart.
  const ofNoise = fit.residualDeviation / Math.sqrt(periodSamples * meanSquare(fit));
  const farthest = 2 * ofNoise * (Math.sqrt(2 * log(gains.length)) + 1);
  if (spread < Math.max(0.01, 2 * scatter, farthest)) return null;
  return { code: 'wave.drifts', percent: 100 * spread };
}

/** Of the deviation that noise gives the frequency: more from elsewhere is worth a word. */
const UNSTEADY = 3;
/** And of the frequency, so that what no meter shows is kept quiet. */
const UNSTEADY_RATIO = 2e-4;

/**
 * Something that the harmonics do not explain pulls the frequency. A record of a few cycles can't tell which of its
 * causes it was: they look alike within its resolution.
 */
function unsteadyNotice({ intervalS, periodic }: PeriodicRecord): MeasureNotice | null {
  const { fit, unrest } = periodic;
  const { omegaDeviation, line, noiseRatio } = unrest;
  const ofNoise = noiseRatio[0]! * fit.deviation.omega;
  if (omegaDeviation < Math.max(UNSTEADY * ofNoise, UNSTEADY_RATIO * fit.omega)) return null;
  const hertz = (omega: number): number => Math.abs(omega) / (2 * Math.PI * intervalS);
  return {
    code: 'frequency.unsteady',
    doubtHz: hertz(2 * omegaDeviation),
    line: line === null ? null : { apartHz: hertz(line.apartOmega), ratio: line.ratio },
    sampleRateHz: 1 / intervalS,
  };
}

function acCoupledNotice({ acCoupled }: PeriodicRecord): MeasureNotice | null {
  return acCoupled ? { code: 'coupling.ac' } : null;
}

/** Samples that must stand off the line through their neighbours for the side on which they do to mean something. */
const LEAST_BENDS = 200;
/** Of them, those on the side that a zigzag asks for. */
const ALIKE = 0.97;

/**
 * Whether a record is of a scope's peak detection: of each two neighbours the one is the highest, the other the lowest
 * of an interval, in the same order throughout. So it is a zigzag all along: every other sample stands above the line
 * through its neighbours, the others below. A steep flank only tilts that line, and of noise half stand on either side.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 */
function peakDetected(samples: Float64Array): boolean {
  // Samples in step with a zigzag whose even samples are the high ones, and those in step with the other.
  let [evenHigh, oddHigh] = [0, 0];
  for (let n = 1; n < samples.length - 1; n++) {
    const bend = 2 * samples[n]! - samples[n - 1]! - samples[n + 1]!;
    if (n % 2 === 0 ? bend > 0 : bend < 0) evenHigh++;
    else if (n % 2 === 0 ? bend < 0 : bend > 0) oddHigh++;
  }
  const bends = evenHigh + oddHigh;
  return bends >= LEAST_BENDS && Math.max(evenHigh, oddHigh) >= ALIKE * bends;
}
