import { expect, test } from 'vitest';
import { mainsFragmentCycles } from '../../src/measure/mainsFragment.ts';
import { measureWave } from '../../src/measure/measureWave.ts';
import { gaussianNumbers, randomNumbers } from '../../src/signal/randomNumbers.ts';

const intervalS = 50e-6;
const normal = gaussianNumbers(randomNumbers(3));
const recorded = (at: (t: number) => number, durationS: number, noise = 0.5): Float64Array =>
  Float64Array.from(
    { length: Math.round(durationS / intervalS) },
    (_, n) => at(n * intervalS) + noise * normal(),
  );
const measured = (samples: Float64Array) =>
  measureWave({ samples, intervalS, startS: 0, stepSize: null, acCoupled: false });

test('the top of a mains wave is too short a record, no direct voltage', () => {
  for (const hertz of [50, 60]) {
    for (const durationS of [3e-3, 5e-3]) {
      const samples = recorded(
        (t) => 308 * Math.cos(2 * Math.PI * hertz * (t - durationS / 2 - 3e-4)),
        durationS,
      );
      // Of its own frequency, and not of the other outlet's: 0.15 to 0.3 of a cycle, but for rounding.
      expect(Math.abs(mainsFragmentCycles(samples, intervalS)! - hertz * durationS)).toBeLessThan(1e-12);
      expect(() => measured(samples)).toThrow(
        expect.objectContaining({
          code: 'wave.tooShort',
          facts: expect.objectContaining({ cycles: mainsFragmentCycles(samples, intervalS) }),
        }),
      );
    }
  }
});

test('a direct voltage that ripples, droops, rises or jumps stays one', () => {
  const rails: readonly ((t: number) => number)[] = [
    (t) => 24 + 0.5 * Math.sin(2 * Math.PI * 100 * t),
    (t) => 24 * Math.exp(-t / 0.02),
    (t) => 24 * (1 - 0.2 * Math.exp(-t / 1e-3)),
    (t) => 24 + 200 * t,
    (t) => (t < 2e-3 ? 24 : 20),
  ];
  for (const rail of rails) {
    const samples = recorded(rail, 6e-3, 0.02);
    expect(mainsFragmentCycles(samples, intervalS)).toBeNull();
    expect(measured(samples).periodic).toBeNull();
  }
});

test('what is too short to bend is not said to be a piece of anything', () => {
  // A hundred samples over 0.1 ms: the top of 308 V falls by 0.04 V.
  const samples = Float64Array.from(
    { length: 100 },
    (_, n) => 308 * Math.cos(314e-6 * (n - 50)) + 0.5 * normal(),
  );
  expect(mainsFragmentCycles(samples, 1e-6)).toBeNull();
});
