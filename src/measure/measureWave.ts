import type { ScaleSource } from './doubt/component.ts';
import { ASSUMED_INSTRUMENT, type Instrument } from './doubt/instrument.ts';
import { doubtWave } from './doubtWave.ts';
import { estimateWave } from './estimateWave.ts';
import { locateWave } from './locateWave.ts';
import type { MeasuredWave, WaveInput } from './measuredWave.ts';

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
  /** What the volts are tied to. Default: scope and probe. */
  readonly scaleSource?: ScaleSource;
}

/**
 * Measure one channel in three passes, none of which looks back: what repeats and where, the fit and the values read
 * off it, the uncertainty of each. What is told of the scale in between comes in by `scaledEstimate`.
 *
 * @throws MeasureError `wave.noPeriod`, `wave.tooShort`, `wave.tooCoarse`.
 * @remarks DC and noise are measured over the whole record, with the figures that need a period missing.
 */
export function measureWave(input: WaveInput, options: MeasureOptions = {}): MeasuredWave {
  const { orders, instrument = ASSUMED_INSTRUMENT, scaleSource = 'scope and probe', omega } = options;
  const located = locateWave(input, omega);
  const estimate = estimateWave(input, located, {
    ...(orders === undefined ? {} : { orders }),
    ...{ bits: instrument.bits, omega },
  });
  return doubtWave(estimate, { instrument, scaleSource });
}
