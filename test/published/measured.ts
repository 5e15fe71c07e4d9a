import type { Figure } from '../../src/base/figure.ts';
import { measureWave } from '../../src/measure/measureWave.ts';
import type { WaveFigures } from '../../src/measure/waveFigures.ts';
import { waveOfRms } from '../../src/synth/changedWaves.ts';
import type { KnownWave } from '../../src/synth/knownWave.ts';
import { sampleWave } from '../../src/synth/sampleWave.ts';

/** Two records that share nothing: no whole number of cycles, no rate that divides. */
export const records = [
  { frequencyHz: 60.03, sampleRateHz: 100_000, cycles: 5.3, startPhaseCycles: 0.137 },
  { frequencyHz: 50.02, sampleRateHz: 100_000, cycles: 8.7, startPhaseCycles: 0.444 },
] as const;

export interface BenchRecord {
  readonly frequencyHz: number;
  readonly sampleRateHz: number;
  readonly cycles: number;
  readonly startPhaseCycles: number;
}

/** The figures of the wave at 120 V RMS, measured on such a record without noise. */
export function measured(wave: KnownWave, record: BenchRecord): WaveFigures {
  const samples = sampleWave(waveOfRms(wave, 120), record);
  const intervalS = 1 / record.sampleRateHz;
  return measureWave({ samples, intervalS, startS: 0, stepSize: null, acCoupled: false }).figures;
}

/** The figure's number; a missing figure fails the test with its reason. */
export function numberIn(figure: Figure): number {
  if (figure.value === null) throw new Error(JSON.stringify(figure.reason));
  return figure.value;
}
