import type { PeriodicRecord } from '../measuredWave.ts';
import { type Component, scatter } from './component.ts';

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
