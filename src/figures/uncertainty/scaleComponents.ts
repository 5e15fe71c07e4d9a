import { type Component, within } from './component.ts';
import type { Instrument } from './instrument.ts';

/** Where the volts of a result get their scale from. */
export type ScaleSource = 'scope and probe' | 'meter';

/** What the scale of a reading may be off by: gain and probe, or the meter that it is tied to. */
export function scaleComponents(value: number, instrument: Instrument, source: ScaleSource): Component[] {
  return source === 'meter'
    ? [within('accuracy of the meter', instrument.meterPercent, '%', value / 100)]
    : [
        within('vertical gain', instrument.gainPercent, '%', value / 100),
        within('probe ratio', instrument.probePercent, '%', value / 100),
      ];
}
