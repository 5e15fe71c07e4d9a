import { atan2, hypot } from '../base/elementary.ts';
import { MeasureError } from '../base/measureError.ts';
import type { Notice } from '../base/notice.ts';
import { fitHarmonics } from '../signal/fitHarmonics.ts';
import { hannPower, strongestLine } from '../signal/hannPower.ts';
import type { HarmonicFit } from '../signal/harmonicFit.ts';
import { quantisationStep } from '../signal/quantisation.ts';
import { middleStretch } from '../signal/residual.ts';
import { differenceNoise, extremes } from '../signal/statistics.ts';
import { aperiodicFigures } from './aperiodicFigures.ts';
import type { ScaleSource } from './doubt/component.ts';
import { ASSUMED_INSTRUMENT, type Instrument } from './doubt/instrument.ts';
import { unrest } from './doubt/unrest.ts';
import { doubts } from './doubts.ts';
import { steppedLevels } from './edges.ts';
import { fewCodes } from './fewCodes.ts';
import { foldedExtremes } from './foldedExtremes.ts';
import { type LocatedWave, locateWave } from './locateWave.ts';
import type { MeasuredWave, Outlier, PeriodicWave, WaveInput } from './measuredWave.ts';
import { outliers } from './outliers.ts';
import { significantSeries, smoothCycle, steppedCycle } from './periodicCycle.ts';
import { periodicFigures } from './periodicFigures.ts';

export interface MeasureOptions {
  /** Highest harmonic asked for, ≥ 2; the record may allow fewer. Default 50. */
  readonly orders?: number;
  /** What the measuring chain may be off by. Default ASSUMED_INSTRUMENT. */
  readonly instrument?: Instrument;
  /**
   * Radians a sample, where another channel of the record tells the frequency better: a current is measured at its
   * voltage's. Taken where this channel's own comes within 2 % of it.
   */
  readonly omega?: number;
  /** Radians a sample, rough: where a long record is looked at first, so that its period need not be found again. */
  readonly roughOmega?: number | undefined;
  /** What the volts are tied to. Default: scope and probe. */
  readonly scaleSource?: ScaleSource;
}

/** Samples that a line above the orders is looked for in, at most: six cycles at a million samples a second. */
const LONGEST_LOOK = 2 ** 17;

/**
 * Measure one channel: find the wave, fit it, and read every figure off it, each with its uncertainty.
 *
 * @throws MeasureError `wave.noPeriod`, `wave.tooShort`, `wave.tooCoarse`.
 * @remarks DC and noise are measured over the whole record, with the figures that need a period missing.
 */
export function measureWave(input: WaveInput, options: MeasureOptions = {}): MeasuredWave {
  const { orders = 50, instrument = ASSUMED_INSTRUMENT, scaleSource = 'scope and probe' } = options;
  const located = locateWave(input, options.roughOmega ?? options.omega);
  const { samples, startS } = located;
  const seen = input.stepSize ?? quantisationStep(samples);
  const ofBits = stepOfBits(samples, instrument.bits);
  const where = { samples, startS, intervalS: input.intervalS, aperiodic: located.aperiodic };
  if (located.omega === null) {
    const stepSize = seen ?? ofBits;
    const common = { ...where, stepSize };
    return {
      ...common,
      periodic: null,
      figures: aperiodicFigures({ ...input, stepSize }, located, instrument, scaleSource),
    };
  }
  const known = options.omega !== undefined && Math.abs(located.omega / options.omega - 1) < 0.02;
  const fit = fullFit(located, known ? options.omega! : located.omega, orders, known);
  const codes = fewCodes(samples, fit, seen, input.stepSize !== null);
  const stepSize = codes.stepSize ?? ofBits;
  const common = { ...where, stepSize };
  const periodic = describe(fit, samples, input.intervalS, stepSize, codes.roundedSine);
  const { acCoupled, intervalWithin } = input;
  const record = { ...common, periodic, acCoupled, intervalWithin };
  const notices: Notice[] = doubts(record, orders);
  if (located.split) notices.unshift(splitNotice(record));
  return { ...common, periodic, figures: { ...periodicFigures(record, instrument, scaleSource), notices } };
}

/** The step of a digitiser of so many bits, were its range a quarter wider than the record; null without bits. */
function stepOfBits(samples: Float64Array, bits: number | null): number | null {
  if (bits === null) return null;
  const { max, min } = extremes(samples);
  return max > min ? (1.25 * (max - min)) / 2 ** bits : null;
}

function fullFit(located: LocatedWave, omega: number, orders: number, frequencyKnown: boolean): HarmonicFit {
  const { samples } = located;
  // Close to half the sample rate an order and its alias can't be told apart over a few cycles.
  const allowed = Math.floor((0.92 * Math.PI) / omega);
  for (let tried = Math.min(orders, allowed); tried >= 1; tried = Math.floor(tried / 2)) {
    const fit = fitHarmonics(samples, { orders: tried, omega, frequencyKnown });
    if (fit !== null) return fit;
  }
  throw new MeasureError('wave.noPeriod', 'The record holds too few samples to tell a wave from chance.', {
    expected: 'some hundred samples over three cycles or more',
    received: `${samples.length} samples`,
    advice: 'save the whole record of the scope, not the screen picture',
  });
}

function describe(
  fit: HarmonicFit,
  samples: Float64Array,
  intervalS: number,
  stepSize: number | null,
  isRoundedSine: boolean,
): PeriodicWave {
  const phaseRad = atan2(fit.cosine[0]!, fit.sine[0]!);
  // Between codes the second differences of a slow wave are nothing, and at edges the residual is no noise: the
  // smaller of the two finds levels, and is the noise of a stepped wave. A smooth wave leaves its noise behind.
  const least = Math.min(fit.residualDeviation, differenceNoise(samples));
  const highest = (fit.cosine.length + 0.5) * fit.omega;
  const residualPower = hannPower(middleStretch(fit.residual, LONGEST_LOOK), LONGEST_LOOK);
  const line = residualPower === null ? null : strongestLine(residualPower, highest);
  // The highest of thousands of bins of white noise stands ln N ≈ 10 times above their mean; 25 is no chance.
  // Under a thousandth of the fundamental nobody would call it ripple.
  const audible = 1e-3 * hypot(fit.cosine[0]!, fit.sine[0]!);
  const ripple = line !== null && line.prominence > 25 && line.rms * Math.SQRT2 > audible ? line : null;
  const restless = unrest(fit);
  const series = significantSeries(fit, restless.noiseRatio);
  const periodSamples = (2 * Math.PI) / fit.omega;
  const extent = extremes(samples);
  const { levels, switchesPerCycle } = steppedLevels(samples, periodSamples, {
    noise: least,
    step: stepSize ?? 0,
    extent,
    isSineAndLine: isSineAndLine(fit, ripple?.rms ?? 0),
  });
  const described = {
    extent,
    fit,
    phaseRad,
    series,
    cycle: levels.length > 0 ? steppedCycle(samples, fit, phaseRad) : smoothCycle(fit, series, phaseRad),
    levels,
    switchesPerCycle,
    fewCodes: isRoundedSine && levels.length === 0,
    residualPower,
    ripple: ripple === null ? null : { ...ripple, frequencyHz: ripple.omega / (2 * Math.PI * intervalS) },
    noise: levels.length > 0 ? least : fit.residualDeviation,
    periodSamples,
    gains: cycleGains(samples, fit),
    unrest: restless,
  };
  const lone = outliers({ samples, stepSize, periodic: described });
  const undamaged = withoutValues(samples, lone);
  const noiseRatio = restless.noiseRatio.reduce((sum, ratio) => sum + ratio, 0) / restless.noiseRatio.length;
  const seen = { noise: least, noiseRatio, stepSize, isStepped: levels.length > 0 };
  return { ...described, outliers: lone, extremes: foldedExtremes(undamaged, fit, phaseRad, seen) };
}

/** Of the power beside the fundamental: of a staircase no line has half of it. */
const ONE_LINE = 0.7;

function isSineAndLine({ cosine, sine, residualDeviation }: HarmonicFit, rippleRms: number): boolean {
  let [largest, sum] = [rippleRms ** 2, residualDeviation ** 2];
  for (let k = 1; k < cosine.length; k++) {
    const square = (cosine[k]! ** 2 + sine[k]! ** 2) / 2;
    largest = Math.max(largest, square);
    sum += square;
  }
  return largest > ONE_LINE * sum;
}

/** A damaged value is no peak. */
function withoutValues(samples: Float64Array, lone: readonly Outlier[]): Float64Array {
  if (lone.length === 0) return samples;
  const left = samples.slice();
  for (const { sample } of lone) left[sample] = Number.NaN;
  return left;
}

function splitNotice(record: { startS: number; intervalS: number; samples: Float64Array }): Notice {
  const endS = record.startS + record.samples.length * record.intervalS;
  return {
    code: 'span.longest',
    message: `A gap of over half a cycle splits the record: its longest part is measured, ${Number(record.startS.toPrecision(5))} s to ${Number(endS.toPrecision(5))} s.`,
  };
}

/**
 * The size of each whole cycle relative to the fit over all of them.
 *
 * g = 1 + Σ r·s / Σ s² over the cycle, s the series without its mean, r the residual
 *
 * @returns one ratio a whole cycle, in time order; 1 where nothing changes.
 * @remarks Blind to where a cycle starts between two samples, which the RMS of a cut-out cycle is not.
 */
function cycleGains(samples: Float64Array, fit: HarmonicFit): readonly number[] {
  const periodSamples = (2 * Math.PI) / fit.omega;
  const gains: number[] = [];
  const room = new Float64Array(Math.ceil(periodSamples) + 1);
  for (let cycle = 0; (cycle + 1) * periodSamples <= samples.length; cycle++) {
    const from = Math.round(cycle * periodSamples);
    const to = Math.round((cycle + 1) * periodSamples);
    const gain = gainOf(samples.subarray(from, to), fit.residual.stretch(from, to, room), fit.mean);
    if (gain !== null) gains.push(gain);
  }
  return gains;
}

/** Null for a cycle without samples. */
function gainOf(samples: Float64Array, left: Float64Array, mean: number): number | null {
  let match = 0;
  let square = 0;
  for (let i = 0; i < left.length; i++) {
    const residual = left[i]!;
    if (Number.isNaN(residual)) continue;
    const series = samples[i]! - residual - mean;
    match += residual * series;
    square += series * series;
  }
  return square > 0 ? 1 + match / square : null;
}
