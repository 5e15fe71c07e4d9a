import { type Component, within } from './component.ts';
import type { Instrument } from './instrument.ts';

/** Where the volts of a result get their scale from. */
export type ScaleSource = 'scope and probe' | 'meter' | DifferenceScale;

/** The scale of a difference of two channels: two gains, two ratios, and the time between them. */
export interface DifferenceScale {
  /** Of the difference's RMS, in U. */
  readonly components: readonly Component[];
  /** That RMS, > 0, in U. */
  readonly rms: number;
}

/** What the scale of a reading may be off by: gain and probe, or the meter that it is tied to. */
export function scaleComponents(value: number, instrument: Instrument, source: ScaleSource): Component[] {
  if (source === 'meter') return [within('accuracy of the meter', instrument.meterPercent, '%', value / 100)];
  if (source === 'scope and probe') {
    return [
      within('vertical gain', instrument.gainPercent, '%', value / 100),
      within('probe ratio', instrument.probePercent, '%', value / 100),
    ];
  }
  return source.components.map((component) => ({
    ...component,
    sensitivity: (component.sensitivity * value) / source.rms,
  }));
}
