import type { Figure } from '../../base/figure.ts';
import { differenceNoise } from '../../signal/differenceNoise.ts';
import { moments } from '../../signal/moments.ts';
import { budgeted } from '../uncertainty/budget.ts';
import { type Component, scatter, within } from '../uncertainty/component.ts';
import { ASSUMED_INSTRUMENT, OFFSET_PERCENT_OF_RANGE } from '../uncertainty/instrument.ts';
import { scaleComponents } from '../uncertainty/scaleComponents.ts';
import type { SampledChannel } from './fittedChannel.ts';
import type { Chain } from './measurePower.ts';
import { weightedMean } from './weightedMean.ts';

/** One channel of a DC input: its mean and ripple, and what a mean may be off by. */
export interface DirectChannel {
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
export function directChannel(
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
        ? { value: null, reason: 'the mean is zero' }
        : budgeted(percent, [...rippleOwn(100 / Math.abs(mean)), ...reading(percent / mean)]),
    scale,
    reading,
  };
}
