import { atan2, hypot } from '../base/elementary.ts';
import { fitHarmonics } from '../signal/fitHarmonics.ts';
import { hannPower, strongestLine } from '../signal/hannPower.ts';
import type { HarmonicFit } from '../signal/harmonicFit.ts';
import { quantisationStep } from '../signal/quantisation.ts';
import { middleStretch } from '../signal/residual.ts';
import { differenceNoise, extremes, moments } from '../signal/statistics.ts';
import { unrest } from './doubt/unrest.ts';
import { steppedLevels } from './edges.ts';
import { fewCodes } from './fewCodes.ts';
import { foldedExtremes } from './foldedExtremes.ts';
import type { LocatedWave } from './locateWave.ts';
import type { Outlier, PeriodicWave, WaveInput } from './measuredWave.ts';
import { measureError } from './measureErrors.ts';
import { outliers } from './outliers.ts';
import { significantSeries, smoothCycle, steppedCycle } from './periodicCycle.ts';
import { periodicQuantities } from './periodicQuantities.ts';
import type { WaveEstimate } from './waveEstimate.ts';

interface EstimateOptions {
  /** Highest harmonic asked for, ≥ 2; the record may allow fewer. Default 50. */
  readonly orders?: number;
  /** Of the digitiser, where they were told. */
  readonly bits?: number | null;
  /** Radians a sample, where another channel of the record tells the frequency better. */
  readonly omega?: number | undefined;
}

/** Samples that a line above the orders is looked for in, at most: six cycles at a million samples a second. */
const LONGEST_LOOK = 2 ** 17;

/**
 * The second pass over a wave, after `locateWave`: the fit and all values read off it, in the volts of the file and
 * without a doubt about them.
 *
 * @throws MeasureError `wave.noPeriod` where the record holds too few samples.
 */
export function estimateWave(
  input: WaveInput,
  located: LocatedWave,
  { orders = 50, bits = null, omega }: EstimateOptions = {},
): WaveEstimate {
  const { samples, startS, aperiodic, split } = located;
  const { intervalS, intervalWithin, acCoupled } = input;
  const seen = input.stepSize ?? quantisationStep(samples);
  const ofBits = stepOfBits(samples, bits);
  const common = { samples, startS, intervalS, intervalWithin, acCoupled, split, ordersAsked: orders };
  if (located.omega === null) {
    const stepSize = seen ?? ofBits;
    return { ...common, stepSize, aperiodic, periodic: null, moments: moments(samples) };
  }
  const known = omega !== undefined && Math.abs(located.omega / omega - 1) < 0.02;
  const fit = fullFit(located, known ? omega : located.omega, orders, known);
  const codes = fewCodes(samples, fit, seen, input.stepSize !== null);
  const stepSize = codes.stepSize ?? ofBits;
  const periodic = describe(fit, samples, intervalS, stepSize, codes.roundedSine);
  const quantities = periodicQuantities(samples, periodic);
  return { ...common, stepSize, aperiodic: null, periodic, quantities };
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
  throw measureError('wave.noPeriod.fewSamples', { samples: samples.length });
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
