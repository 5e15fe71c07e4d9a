import type { Instrument } from '../uncertainty/instrument.ts';
import type { ScaleSource } from '../uncertainty/scaleComponents.ts';

/** What the voltages and times of a record may be off by. */
export interface MeasuringChain {
  readonly instrument: Instrument;
  readonly scaleSource: ScaleSource;
}
