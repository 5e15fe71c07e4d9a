import type { PeriodicRecord } from '../measuredWave.ts';
import type { PeriodicQuantities } from '../periodicQuantities.ts';
import { type Component, ownDistortion, scatter, within } from './component.ts';
import { type Instrument, OFFSET_PERCENT_OF_RANGE } from './instrument.ts';
import { roundingLeft } from './roundingLeft.ts';
import { type ScaleSource, scaleComponents } from './scaleComponents.ts';

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
    offset: (sensitivity) => within('vertical offset', offset, 'U', sensitivity),
    timeBase: (ppm) => within('time base', instrument.timeBasePpm, 'ppm', ppm),
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
