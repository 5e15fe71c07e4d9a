import { expect, test } from 'vitest';
import { type SynthFlags, synthesisOptions } from '../../../src/cli/synthesisOptions.ts';

const usual: SynthFlags = {
  ...{ out: 'a.csv', rms: 120, frequency: 60, rate: 100_000, cycles: 5, phase: 0, offset: 0, noise: 1 },
  ...{ bits: 8, seed: 1, layout: 'comma', probe: 1, edge: 0, tilt: 0 },
};

test.each([
  [{ rate: 1e12 }, /would hold 8\.33e\+10 samples/],
  [{ rate: 1e308 }, /^rate must lie between/],
  [{ cycles: 1e8 }, /samples, more than/],
  [{ frequency: 1e-300 }, /^frequency must/],
  [{ rms: 1e308 }, /^rms must/],
  [{ noise: 1e308 }, /^noise must/],
  [{ bits: 1e9 }, /^bits must/],
  [{ probe: 1e-308 }, /^probe must/],
  [{ levels: 1e9 + 1 }, /^levels must/],
  [{ carrier: 1e9 + 1 }, /^carrier must/],
  [{ harmonic: [{ order: 1e9, ratio: 0.05, phaseRad: 0 }] }, /order of a harmonic is at most/],
])('synthesisOptions refuses %o in one line', (flags, message) => {
  expect(() => synthesisOptions('sine', { ...usual, ...flags })).toThrow(RangeError);
  expect(() => synthesisOptions('sine', { ...usual, ...flags })).toThrow(message);
});

test('synthesisOptions takes what a bench may see', () => {
  expect(synthesisOptions('sine', usual)).toMatchObject({ rmsV: 120, frequencyHz: 60, bits: 8 });
  expect(synthesisOptions('sine', { ...usual, rate: 1e9, cycles: 0.5 }).sampleRateHz).toBe(1e9);
});
