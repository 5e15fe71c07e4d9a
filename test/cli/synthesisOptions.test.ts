import { expect, test } from 'vitest';
import { type SynthFlags, synthesisOptions } from '../../src/cli/synthesisOptions.ts';

const flags: SynthFlags = {
  ...{ out: 'a.csv', rms: 120, frequency: 60, rate: 100_000, cycles: 5, phase: 90, offset: 0, noise: 1 },
  ...{ bits: 0, seed: 1, layout: 'comma', probe: 1, edge: 0.5, tilt: 12, duty: 55 },
};

test('synthesisOptions turns percent into ratios and degrees into cycles', () => {
  const options = synthesisOptions('modified', flags);
  expect(options.startPhaseCycles).toBe(0.25);
  expect(options.noiseRatio).toBe(0.01);
  expect(options.bits).toBe(null);
  expect([options.dutyRatio, options.edgeCycles, options.tiltRatio]).toEqual([0.55, 0.005, 0.12]);
  expect(options.ringing).toBe(undefined);
});

test('synthesisOptions takes the ripple in hertz', () => {
  const { ripple } = synthesisOptions('ripple', { ...flags, ripple: 3, rippleFrequency: 16_000 });
  expect(ripple).toEqual({ ratio: 0.03, order: 16_000 / 60 });
});
