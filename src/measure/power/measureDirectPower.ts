import type { Figure } from '../../base/figure.ts';
import { differenceNoise, moments } from '../../signal/statistics.ts';
import { wholeCycleWeights } from '../../signal/wholeCycleWeights.ts';
import { budgeted } from '../doubt/budget.ts';
import { type Component, scaleComponents, scatter, within } from '../doubt/component.ts';
import { ASSUMED_INSTRUMENT, OFFSET_PERCENT_OF_RANGE } from '../doubt/instrument.ts';
import { measureError } from '../measureErrors.ts';
import type { MeasureNotice } from '../notices.ts';
import { missing } from '../reasons.ts';
import type { Chain } from './measurePower.ts';
import type { SampledChannel } from './powerFigures.ts';

interface DirectPowerInput {
  readonly voltage: SampledChannel;
  /** On the same time base, as long as the voltage. */
  readonly current: SampledChannel;
  /** Period of the AC side: an inverter draws its current in pulses, so that means are taken over whole
   * cycles. Absent: over the whole record. */
  readonly periodS?: number;
  readonly voltageChain?: Chain;
  readonly currentChain?: Chain;
}

/** A DC input: means, power and ripple. */
export interface DirectPowerFigures {
  /** Mean of volts times amperes, sample by sample; positive where power goes in. */
  readonly activeW: Figure;
  readonly meanV: Figure;
  readonly meanA: Figure;
  /** RMS without the mean. */
  readonly rippleV: Figure;
  readonly rippleA: Figure;
  /** Ripple over mean. */
  readonly rippleVoltagePercent: Figure;
  readonly rippleCurrentPercent: Figure;
  readonly notices: readonly MeasureNotice[];
}

/**
 * Mean power at a DC input, where the current pulses at twice the outlet's frequency.
 *
 * P = Σ w·v·i, which is not mean V · mean I where both ripple
 *
 * @throws MeasureError `power.noSamples` where the two hold no sample in common.
 * @throws RangeError where the two don't stand on one time base.
 */
export function measureDirectPower(input: DirectPowerInput): DirectPowerFigures {
  const { voltage, current, periodS } = input;
  if (
    voltage.samples.length !== current.samples.length ||
    Math.abs(voltage.startS - current.startS) > 0.25 * voltage.intervalS
  ) {
    throw new RangeError('power of two channels that do not share a time base');
  }
  const weights = presentWeights(voltage, current, periodS);
  const volts = directChannel(voltage, weights, 'voltage', input.voltageChain);
  const amperes = directChannel(current, weights, 'current', input.currentChain);
  const power = weightedMean(weights, (n) => voltage.samples[n]! * current.samples[n]!);
  const activeW = budgeted(power, [
    ...volts.scale(power),
    ...amperes.scale(power),
    ...volts.reading(amperes.mean),
    ...amperes.reading(volts.mean),
  ]);
  return {
    activeW,
    meanV: volts.meanFigure,
    meanA: amperes.meanFigure,
    rippleV: volts.ripple,
    rippleA: amperes.ripple,
    rippleVoltagePercent: volts.ripplePercent,
    rippleCurrentPercent: amperes.ripplePercent,
    notices: activeW.value < -activeW.uncertainty ? [{ code: 'power.negative', activeW: null }] : [],
  };
}

/** Weights of the samples that both channels hold, 0 for the others, sum 1. */
function presentWeights(voltage: SampledChannel, current: SampledChannel, periodS?: number): Float64Array {
  const { samples, intervalS } = voltage;
  const periodSamples = periodS === undefined ? Infinity : periodS / intervalS;
  const whole =
    periodSamples <= samples.length ? wholeCycleWeights(samples.length, periodSamples) : { at: () => 1 };
  const weights = samples.map((_, n) => whole.at(n));
  let sum = 0;
  for (let n = 0; n < weights.length; n++) {
    if (Number.isNaN(samples[n]! + current.samples[n]!)) weights[n] = 0;
    sum += weights[n]!;
  }
  if (sum === 0) {
    throw measureError('power.noSamples', {});
  }
  return weights.map((w) => w / sum);
}

/** One channel of a DC input: its mean and ripple, and what a mean may be off by. */
interface DirectChannel {
  readonly mean: number;
  readonly meanFigure: Figure;
  readonly ripple: Figure;
  readonly ripplePercent: Figure;
  scale(value: number): Component[];
  /** Offset and noise of a mean. */
  reading(sensitivity: number): Component[];
}

/**
 * @param weights - of the means, sum 1, 0 where a sample is missing.
 * @param name - for the components: "voltage".
 */
function directChannel(
  { samples, stepSize }: SampledChannel,
  weights: Float64Array,
  name: string,
  { instrument = ASSUMED_INSTRUMENT, scaleSource = 'scope and probe' }: Chain = {},
): DirectChannel {
  const mean = weightedMean(weights, (n) => samples[n]!);
  const rippleRms = Math.sqrt(weightedMean(weights, (n) => (samples[n]! - mean) ** 2));
  const noise = Math.min(rippleRms, differenceNoise(samples));
  const { max, min } = moments(samples);
  // A direct voltage is measured from zero: zero is part of the range it spans.
  const range = Math.max(max, 0) - Math.min(min, 0);
  const zero = instrument.offsetV ?? (OFFSET_PERCENT_OF_RANGE / 100) * range;
  const noiseOfMean = noise * Math.sqrt(weightedMean(weights, (n) => weights[n]!));
  const scale = (value: number): Component[] =>
    scaleComponents(value, instrument, scaleSource).map((component) => ({
      ...component,
      source: `${component.source} of the ${name}`,
    }));
  const reading = (sensitivity: number): Component[] => [
    within(`vertical offset of the ${name}`, zero, 'U', sensitivity),
    within(`rounding to codes of the ${name}`, (stepSize ?? 0) / 2, 'U', sensitivity),
    scatter(`noise of the ${name}`, noiseOfMean, 'U', sensitivity),
  ];
  // The ripple holds the noise too: ripple² = true² + σ².
  const rippleOwn = (sensitivity: number): Component[] => [
    within('noise counted in', rippleRms - Math.sqrt(rippleRms ** 2 - noise ** 2), 'U', sensitivity),
    scatter('noise', noiseOfMean, 'U', sensitivity),
  ];
  const percent = (100 * rippleRms) / Math.abs(mean);
  return {
    mean,
    meanFigure: budgeted(mean, [...scale(mean), ...reading(1)]),
    ripple: budgeted(rippleRms, [...scale(rippleRms), ...rippleOwn(1)]),
    ripplePercent:
      mean === 0
        ? missing({ code: 'mean.zero' })
        : budgeted(percent, [...rippleOwn(100 / Math.abs(mean)), ...reading(percent / mean)]),
    scale,
    reading,
  };
}

/**
 * Σ w·f(n) over the samples that carry weight.
 *
 * @param weights - shape N, sum 1; 0 where a sample is missing.
 */
function weightedMean(weights: Float64Array, f: (n: number) => number): number {
  let sum = 0;
  for (let n = 0; n < weights.length; n++) if (weights[n]! > 0) sum += weights[n]! * f(n);
  return sum;
}
