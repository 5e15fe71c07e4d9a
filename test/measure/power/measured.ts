import { measureWave } from '../../../src/measure/measureWave.ts';
import type { MeasuredVoltage } from '../../../src/measure/power/commonRecord.ts';
import { measurePower, type PowerInput } from '../../../src/measure/power/measurePower.ts';
import type { PowerFigures } from '../../../src/measure/power/powerFigures.ts';
import { inputOf } from '../inputOf.ts';

/** A voltage channel, measured, that must repeat. */
export function measuredVoltage(samples: Float64Array, sampleRateHz: number): MeasuredVoltage {
  const wave = measureWave(inputOf(samples, sampleRateHz));
  if (wave.periodic === null) throw new Error('the voltage of a test must repeat');
  return { ...wave, periodic: wave.periodic };
}

/** The powers of two waves of time in seconds. */
export function powerOf(
  voltage: (timeS: number) => number,
  current: (timeS: number) => number,
  record: { readonly sampleRateHz: number; readonly durationS: number },
  options: Omit<PowerInput, 'voltage' | 'current'> = {},
): PowerFigures {
  const { sampleRateHz, durationS } = record;
  const sampled = (wave: (timeS: number) => number): Float64Array =>
    Float64Array.from({ length: Math.round(durationS * sampleRateHz) }, (_, n) => wave(n / sampleRateHz));
  return measurePower({
    voltage: measuredVoltage(sampled(voltage), sampleRateHz),
    current: inputOf(sampled(current), sampleRateHz),
    ...options,
  });
}
