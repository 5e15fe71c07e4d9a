import { expect, test } from 'vitest';
import { directCurrent } from '../../src/synth/polylineWave.ts';
import { quantised, sampleWave } from '../../src/synth/sampleWave.ts';
import { sineWave } from '../../src/synth/sines.ts';

const bench = { frequencyHz: 60, sampleRateHz: 100_000, cycles: 5 };

test('quantised rounds to the nearest step, zero among them, and holds at the rails', () => {
  // 3 bits over ±4: steps of 1 from −4 to 3.
  const values = [-9, -4, -3.6, -0.51, -0.49, 0, 0.49, 0.51, 2.7, 3.4, 9];
  expect(values.map((value) => quantised(value, 3, 4) + 0)).toEqual([-4, -4, -4, -1, 0, 0, 0, 1, 3, 3, 3]);
});

test('sampleWave gives the values of the wave at the times of the samples', () => {
  const samples = sampleWave(sineWave(), { ...bench, startPhaseCycles: 0.3, offset: 0.1 });
  expect(samples.length).toBe(8333);
  for (const i of [0, 1, 777, 8332]) {
    const expected = 0.1 + Math.sin(2 * Math.PI * (0.3 + (i * 60) / 100_000));
    // Five cycles of phase rounded in double precision.
    expect(Math.abs(samples[i]! - expected)).toBeLessThan(1e-13);
  }
});

test('sampleWave adds noise of the RMS asked for, the same for the same seed', () => {
  const noise = sampleWave(directCurrent(0), { ...bench, noiseRms: 2, seed: 5 });
  const rms = Math.sqrt(noise.reduce((sum, value) => sum + value * value, 0) / noise.length);
  // Standard error of an RMS: 2/√(2N) = 0.0155; four of them allowed.
  expect(Math.abs(rms - 2)).toBeLessThan(4 * 0.0155);
  expect(sampleWave(directCurrent(0), { ...bench, noiseRms: 2, seed: 5 })).toEqual(noise);
  expect(sampleWave(directCurrent(0), { ...bench, noiseRms: 2, seed: 6 })).not.toEqual(noise);
});

test('sampleWave refuses an empty record, bits without a full scale and half bits', () => {
  const half = { ...bench, bits: 7.5, fullScale: 2 };
  expect(() => sampleWave(sineWave(), half)).toThrow(RangeError);
  expect(() => sampleWave(sineWave(), { ...bench, cycles: 0 })).toThrow(RangeError);
  expect(() => sampleWave(sineWave(), { ...bench, bits: 8 })).toThrow(RangeError);
});
