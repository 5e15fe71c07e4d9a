import { expect, test } from 'vitest';
import { measureWave } from '../../src/measure/measureWave.ts';
import type { WaveFigures } from '../../src/measure/waveFigures.ts';
import { LONG_RECORD } from '../../src/signal/recordParts.ts';
import { sampleWave } from '../../src/synth/sampleWave.ts';
import { waveNamed } from '../../src/synth/waveNamed.ts';

const harmonics = [
  { order: 3, ratio: 0.05, phaseRad: 0.4 },
  { order: 7, ratio: 0.02, phaseRad: -1 },
  { order: 49, ratio: 0.01, phaseRad: 2 },
];

/** By microseconds and in the shape of a long, slow log: both pass LONG_RECORD samples. */
const rates = [
  [1e6, 13.37],
  [20e3, 611.3],
] as const;

function measured(samples: Float64Array, sampleRateHz: number): WaveFigures {
  expect(samples.length).toBeGreaterThan(LONG_RECORD);
  return measureWave({ samples, intervalS: 1 / sampleRateHz, startS: 0, stepSize: null, acCoupled: false })
    .figures;
}

test.each(rates)(
  '%f samples a second, %f cycles: RMS, frequency and harmonics of a known wave to a part in ten thousand',
  (sampleRateHz, cycles) => {
    const wave = waveNamed.harmonics({ harmonics });
    const samples = sampleWave(wave, {
      ...{ frequencyHz: 50.03, sampleRateHz, cycles, startPhaseCycles: 0.2, offset: 0.01 },
    });
    samples.fill(Number.NaN, 1000, 1040);
    const figures = measured(samples, sampleRateHz);
    const rms = Math.hypot(wave.truth.rms, 0.01);
    expect(Math.abs(figures.rms.value! / rms - 1)).toBeLessThan(1e-4);
    expect(Math.abs(figures.mean.value! - 0.01)).toBeLessThan(1e-4);
    expect(Math.abs(figures.frequencyHz.value! / 50.03 - 1)).toBeLessThan(1e-7);
    for (const { order, rms: found } of figures.harmonics) {
      const ratio = order === 1 ? 1 : (harmonics.find((part) => part.order === order)?.ratio ?? 0);
      expect(Math.abs(found - ratio * Math.SQRT1_2)).toBeLessThan(1e-4 * Math.SQRT1_2);
    }
    // √(0.05² + 0.02² + 0.01²), each harmonic within 1e-4 as above.
    expect(Math.abs(figures.thdPercent.value! - 5.4772)).toBeLessThan(0.01 * Math.sqrt(3));
  },
);

test.each(rates)(
  '%f samples a second, %f cycles: a modified sine with noise keeps its RMS, dwell and levels',
  (sampleRateHz, cycles) => {
    const wave = waveNamed.modified({ dutyRatio: 0.6, edgeCycles: 0.01 });
    const samples = sampleWave(wave, {
      ...{ frequencyHz: 60.01, sampleRateHz, cycles, noiseRms: 0.01, bits: 8, fullScale: 1.3, seed: 2 },
    });
    const figures = measured(samples, sampleRateHz);
    // 1 % of noise adds 1e-4 to the mean square of about 0.6; half a code of rounding moves a level by 0.5 %.
    expect(Math.abs(figures.rms.value! / wave.truth.rms - 1)).toBeLessThan(5e-3);
    expect(Math.abs(figures.dwellPercent.value! - 40)).toBeLessThan(0.5);
    expect(Math.abs(figures.frequencyHz.value! / 60.01 - 1)).toBeLessThan(1e-5);
  },
);
