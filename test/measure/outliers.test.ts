import { expect, test } from 'vitest';
import { measureWave } from '../../src/measure/measureWave.ts';
import type { MeasureNotice } from '../../src/measure/notices.ts';
import { sampleWave } from '../../src/synth/sampleWave.ts';
import { waveNamed } from '../../src/synth/waveNamed.ts';

/** Five cycles of 400 samples with 1 % of noise. */
function recorded(shape: 'sine' | 'modified' | 'square'): Float64Array {
  return sampleWave(waveNamed[shape]({}), {
    ...{ frequencyHz: 50, sampleRateHz: 20_000, cycles: 5, noiseRms: 0.01, seed: 9 },
  });
}

function outlierNotice(samples: Float64Array): MeasureNotice | undefined {
  const { figures } = measureWave({
    ...{ samples, intervalS: 1 / 20_000, startS: 0, stepSize: null, acCoupled: false },
  });
  return figures.notices.find(({ code }) => code === 'value.outlier');
}

test.each(['sine', 'modified', 'square'] as const)('a %s as it is has none', (shape) => {
  expect(outlierNotice(recorded(shape))).toBe(undefined);
});

test.each(['sine', 'modified', 'square'] as const)(
  'one wrong value of a %s is told with its time',
  (shape) => {
    const samples = recorded(shape);
    samples[1234] = 5;
    expect(outlierNotice(samples)).toMatchObject({ value: 5, atS: expect.closeTo(0.0617, 12), more: 0 });
    samples[300] = -5;
    expect(outlierNotice(samples)).toMatchObject({ value: -5, atS: expect.closeTo(0.015, 12), more: 1 });
  },
);

test('twenty deviations beside a sine are told, three are noise', () => {
  const samples = recorded('sine');
  samples[800]! += 0.2;
  expect(outlierNotice(samples)).toBeDefined();
  samples[800]! -= 0.17;
  expect(outlierNotice(samples)).toBe(undefined);
});

test('an edge, however steep, is no wrong value, nor is a flight of several samples', () => {
  const samples = recorded('sine');
  for (const n of [700, 701]) samples[n]! += 3;
  expect(outlierNotice(samples)).toBe(undefined);
});
