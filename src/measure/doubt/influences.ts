import type { PeriodicRecord } from '../measuredWave.ts';
import { roundingLeft } from '../ordersOf.ts';
import type { PeriodicQuantities } from '../periodicQuantities.ts';
import {
  alikeWithin,
  type Component,
  ownDistortion,
  type ScaleSource,
  scaleComponents,
  scatter,
  within,
} from './component.ts';
import { type Instrument, OFFSET_PERCENT_OF_RANGE } from './instrument.ts';

/**
 * What may have moved a wave's figures, each as a function of how the figure answers to it (its sensitivity).
 * U stands for the channel's unit.
 */
export interface Influences {
  /** Gain and probe, or the meter that the scale is tied to. @param value - of the figure, in U. */
  scale(value: number): Component[];
  /** @param sensitivity - in the figure's unit per U. */
  offset(sensitivity: number): Component;
  /** @param ppm - what a millionth does to the figure. */
  timeBase(ppm: number): Component;
  /** Noise of a mean over the whole cycles. */
  noise(sensitivity: number): Component;
  /** Noise of one point of the fitted series. */
  cycleNoise(sensitivity: number): Component;
  /** What rounding to codes leaves in a level, or in one order, where no noise breaks it up. */
  rounding(sensitivity: number): Component;
  /** Edges that fall between two samples. @param sensitivity - per cycle of time that all edges of a cycle are off. */
  edgeTime(sensitivity: number): Component;
  /** The scope's own distortion in one order. @param sensitivity - in the figure's unit per % of the fundamental. */
  distortion(sensitivity: number): Component;
}

export function influences(
  record: PeriodicRecord,
  quantities: PeriodicQuantities,
  instrument: Instrument,
  scaleSource: ScaleSource,
): Influences {
  const { fit, periodSamples } = record.periodic;
  const { max, min, averagedSamples, edge } = quantities;
  const offset = instrument.offsetV ?? (OFFSET_PERCENT_OF_RANGE / 100) * (max - min);
  const { noise, unrest } = record.periodic;
  // Means live at the low frequencies.
  const ratio = unrest.noiseRatio[0]!;
  // An edge is known to half a sample interval each way; wider edges are seen by several samples.
  const isBetween = edge !== null ? edge.riseSamples < 3 : record.periodic.extremes?.jumps === true;
  const betweenSamples = isBetween ? 0.5 / periodSamples : 0;
  return {
    scale: (value) => scaleComponents(value, instrument, scaleSource),
    offset: (sensitivity) => alikeWithin('vertical offset', offset, 'U', sensitivity),
    timeBase: (ppm) => alikeWithin('time base', instrument.timeBasePpm, 'ppm', ppm),
    noise: (sensitivity) =>
      scatter('noise', (ratio * fit.residualDeviation) / Math.sqrt(averagedSamples), 'U', sensitivity),
    cycleNoise: (sensitivity) => scatter('noise of the cycle', cycleDeviation(record), 'U', sensitivity),
    rounding: (sensitivity) =>
      within('rounding to codes', roundingLeft(record.stepSize, noise), 'U', sensitivity),
    edgeTime: (sensitivity) => within('edges between samples', betweenSamples, 'cycles', sensitivity),
    distortion: (sensitivity) => ownDistortion(instrument.distortionPercent, sensitivity),
  };
}

/** Standard deviation of one point of the wave's cycle: of a bin of a folded record, of the orders heard otherwise. */
function cycleDeviation({ periodic }: PeriodicRecord): number {
  const { fit, series, levels, noise, unrest } = periodic;
  // Bins of sixteen samples, and a median is 1.25 times as noisy as a mean.
  if (levels.length > 0) return (1.25 * noise) / 4;
  let variance = fit.deviation.mean ** 2;
  for (let k = 0; k < fit.cosine.length; k++) {
    if (series.cosine[k] === 0 && series.sine[k] === 0) continue;
    variance +=
      (unrest.noiseRatio[k]! ** 2 * (fit.deviation.cosine[k]! ** 2 + fit.deviation.sine[k]! ** 2)) / 2;
  }
  return Math.sqrt(variance);
}

/**
 * How far the mean of the cycles may be off because they differ, beyond what noise makes them differ (type A).
 *
 * u = √((s² − σ²) / M), s the deviation of the cycles' sizes, σ what noise gives each, M their number
 *
 * @param value - of the figure that scales with the cycles' size.
 * @returns nothing below three cycles, or where noise explains the scatter: a variance of few values passes four
 * times its expectation in one case of fifty.
 * @see JCGM 100:2008, 4.2.3 and G.3: Student's t with M − 1 degrees of freedom.
 */
export function cycleScatter(record: PeriodicRecord, value: number): readonly Component[] {
  const { gains } = record.periodic;
  const count = gains.length;
  if (count < 3) {
    const { sizeRatio } = record.periodic.unrest;
    return sizeRatio > 0 ? [scatter('scatter between cycles', 100 * sizeRatio, '%', value / 100)] : [];
  }
  const mean = gains.reduce((sum, gain) => sum + gain / count, 0);
  const variance = gains.reduce((sum, gain) => sum + (gain - mean) ** 2, 0) / (count - 1);
  const { fit, periodSamples } = record.periodic;
  let power = 0;
  for (let k = 0; k < fit.cosine.length; k++) power += (fit.cosine[k]! ** 2 + fit.sine[k]! ** 2) / 2;
  const ofNoise = fit.residualDeviation ** 2 / (power * periodSamples);
  if (variance <= 4 * ofNoise) return [];
  return [
    {
      source: 'scatter between cycles',
      type: 'A',
      distribution: 'student',
      standardUncertainty: 100 * Math.sqrt((variance - ofNoise) / count),
      unit: '%',
      sensitivity: value / 100,
      degreesOfFreedom: count - 1,
    },
  ];
}

export interface ResidualPowerInput {
  /** Of what the fit leaves, in U. */
  readonly residualDeviation: number;
  readonly sampleCount: number;
  /** 1 / Σ w² of the whole-cycle weights. */
  readonly averagedSamples: number;
  /** V1, RMS, in U. */
  readonly fundamental: number;
}

/**
 * What noise does to q = √(RMS² − mean² − V1²) / V1, beyond what it does to the orders.
 *
 * RMS weighs whole cycles (w), V1 is fitted to all samples alike (1/N): their difference sees the noise e through
 * 2 Σ (w − 1/N)·s1·e, of deviation 2·σ·V1·√(Σ w² − 1/N). And the power of the noise itself scatters by σ²·√(2/N).
 * With d(q²) = 2q·dq; next to nothing, where that runs away, q is off by no more than √d(q²).
 *
 * @param percent - 100 q.
 * @returns components in %.
 */
export function residualPower(
  percent: number,
  { residualDeviation, sampleCount, averagedSamples, fundamental }: ResidualPowerInput,
): readonly Component[] {
  const ratio = residualDeviation / fundamental;
  // Nothing is left under the noise itself.
  const q = Math.max(percent / 100, ratio / Math.sqrt(sampleCount), Number.MIN_VALUE);
  const apart = Math.sqrt(Math.max(0, 1 / averagedSamples - 1 / sampleCount));
  const mixed = Math.min((100 * ratio * apart) / q, 100 * Math.sqrt(2 * ratio * apart));
  const own = ratio ** 2 * Math.sqrt(2 / sampleCount);
  return [
    scatter('noise between the cycles of RMS and fundamental', mixed, '%'),
    scatter('power of the noise', Math.min((100 * own) / (2 * q), 100 * Math.sqrt(own)), '%'),
  ];
}
