import type { MeasuredWave, WaveInput } from '../../src/measure/measuredWave.ts';
import { measureWave } from '../../src/measure/measureWave.ts';
import type { KnownWave } from '../../src/synth/knownWave.ts';
import { type SamplingOptions, sampleWave } from '../../src/synth/sampleWave.ts';

/** Samples as a channel's input, DC-coupled, from time 0. */
export function inputOf(samples: Float64Array, sampleRateHz: number): WaveInput {
  return { samples, intervalS: 1 / sampleRateHz, startS: 0, stepSize: null, acCoupled: false };
}

/** A known wave, sampled and measured. */
export function measured(wave: KnownWave, options: SamplingOptions, orders = 50): MeasuredWave {
  return measureWave(inputOf(sampleWave(wave, options), options.sampleRateHz), { orders });
}
