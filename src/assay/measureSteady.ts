import { compareMeter, type MeterComparison } from '../judge/compareMeter.ts';
import { classifyWave, SINE_THD_PERCENT } from '../judge/waveform/classifyWave.ts';
import type { Waveform } from '../judge/waveform/waveform.ts';
import type { ScaleSource } from '../measure/doubt/component.ts';
import type { Instrument } from '../measure/doubt/instrument.ts';
import { doubtWave } from '../measure/doubtWave.ts';
import { estimateWave } from '../measure/estimateWave.ts';
import type { MeasuredWave } from '../measure/measuredWave.ts';
import { locateSteady } from '../measure/steadyWave.ts';
import type { FollowedSupply } from '../measure/steps/followSupply.ts';
import { scaledSupply } from '../measure/steps/supplyTimeline.ts';
import { tieScale } from '../measure/tiedScale.ts';
import type { Capture, Channel, SampleRange } from '../read/capture.ts';

interface MeasuredSteady {
  readonly measured: Measured;
  /** Undefined: the whole record. */
  readonly stretch: SampleRange | undefined;
  /** As followed, on the measured channel's scale; null where that is no supply's voltage. */
  readonly supply: FollowedSupply | null;
}

/**
 * A channel measured on its longest steady stretch; on the whole record where it has none, or where nothing repeats in
 * that, or it is a fragment that is no supply's: neither what it lacks nor what it has says something of the record.
 *
 * @throws MeasureError as `measureWave` does for the whole record.
 */
export function measureSteady(
  capture: Capture,
  channel: Channel,
  instrument: Instrument,
  followed: FollowedSupply | null,
  options: MeterOptions,
): MeasuredSteady {
  const { orders = 50, sineThdPercent = SINE_THD_PERCENT } = options;
  const { input, located, stretch, course } = locateSteady(capture, channel, followed);
  const asFiled = estimateWave(input, located, { orders, bits: instrument.bits });
  const {
    estimate,
    scaleSource,
    meter,
    channel: calibrated,
  } = tieScale(asFiled, channel, instrument, options.meter);
  const wave = doubtWave(estimate, { instrument, scaleSource });
  const waveform = classifyWave(wave, sineThdPercent);
  const comparison = meter === null ? null : compareMeter(meter, waveform);
  const gain = calibrated.scale / channel.scale;
  const supply = gain === 1 || course === null ? course : scaledSupply(course, gain, calibrated.samples);
  return { measured: { wave, waveform, meter: comparison, scaleSource, calibrated }, stretch, supply };
}

interface MeterOptions {
  readonly meter?: { readonly readingV: number; readonly dcCoupled: boolean };
  readonly orders?: number;
  readonly sineThdPercent?: number;
}

/** A channel measured, and what its volts are tied to. */
export interface Measured {
  readonly wave: MeasuredWave;
  readonly waveform: Waveform;
  readonly meter: MeterComparison | null;
  readonly scaleSource: ScaleSource;
  readonly calibrated: Channel;
}
