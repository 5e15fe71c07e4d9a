import { expect, test } from 'vitest';
import { amplitudeLevels } from '../../src/signal/amplitudeLevels.ts';
import { sampleWave } from '../../src/synth/sampleWave.ts';
import { waveNamed } from '../../src/synth/waveNamed.ts';

const sampled = (wave: Parameters<typeof sampleWave>[0], cycles = 3.3): Float64Array =>
  sampleWave(wave, {
    frequencyHz: 50,
    sampleRateHz: 40_000,
    cycles,
    startPhaseCycles: 0.1,
    noiseRms: 0.01,
    bits: 8,
    fullScale: 1.3,
  });
const options = { noise: 0.01, step: 2.6 / 256 };

test('a staircase of L levels has L levels, at their heights', () => {
  for (const levels of [5, 7, 9, 11, 13, 15, 17]) {
    const found = amplitudeLevels(sampled(waveNamed.staircase({ levels })), options);
    expect(found.length).toBe(levels);
    const step = 2 / (levels - 1);
    found.forEach(({ value }, i) => {
      // A level's mean over its samples: noise of 1 % over tens of samples, and half a code.
      expect(Math.abs(value - (-1 + i * step))).toBeLessThan(0.01);
    });
  }
});

test('a modified sine of duty d rests at zero for 1 − d of the time', () => {
  for (const dutyRatio of [0.3, 0.5, 0.7, 0.9]) {
    const found = amplitudeLevels(sampled(waveNamed.modified({ dutyRatio }), 3), options);
    expect(found.length).toBe(3);
    // Whole cycles at a rate that divides: an edge is off by a sample of 800 at most, four times a cycle.
    expect(Math.abs(found[1]!.share - (1 - dutyRatio))).toBeLessThan(4 / 800);
  }
});

test('ringing tops and droop do not make levels of their own', () => {
  const wave = waveNamed.modified({
    dutyRatio: 0.6,
    tiltRatio: 0.12,
    ringing: { ratio: 0.2, order: 40, decayCycles: 0.03 },
  });
  expect(amplitudeLevels(sampled(wave), options).length).toBe(3);
});

test('a sine, a triangle and a constant have none', () => {
  expect(amplitudeLevels(sampled(waveNamed.sine({})), options)).toEqual([]);
  expect(amplitudeLevels(sampled(waveNamed.triangle({})), options)).toEqual([]);
  expect(amplitudeLevels(new Float64Array(100), options)).toEqual([]);
});

test('flanks of a clipped sine that the same phases sample in every cycle are no levels', () => {
  for (const clipRatio of [0.36, 0.4, 0.44, 0.52, 0.6]) {
    for (const sampleRateHz of [5_000, 6_000, 10_000]) {
      const samples = sampleWave(waveNamed.clipped({ clipRatio }), {
        frequencyHz: 50,
        sampleRateHz,
        cycles: 20,
        startPhaseCycles: 0.137,
        noiseRms: 0.01 * clipRatio,
        bits: 8,
        fullScale: 1.3 * clipRatio,
      });
      const found = amplitudeLevels(samples, { noise: 0.01 * clipRatio, step: (2.6 * clipRatio) / 256 });
      // At most the two tops are left, where the flanks are short enough to pass for edges.
      expect(found.length).toBeLessThanOrEqual(2);
    }
  }
});
