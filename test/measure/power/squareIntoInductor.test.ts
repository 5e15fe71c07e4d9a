import { expect, test } from 'vitest';
import { loadKind } from '../../../src/judge/loadKind.ts';
import { measureWave } from '../../../src/measure/measureWave.ts';
import { inputOf } from '../inputOf.ts';
import { numberOf, uncertaintyOf } from './figureNumbers.ts';
import { powerOf } from './measured.ts';

// D. W. Hart, "Power Electronics" (2011), examples 8-1 and 8-2 (from memory): a square wave of 100 V, 60 Hz into
// R = 10 Ω and L = 25 mH; printed 6.64 A, 441 W. Recomputed in closed form: i = 10 − 19.3111·e^(−t/2.5 ms).
const half = 1 / 120;
const volts = (t: number): number => (Math.floor(t / half) % 2 === 0 ? 100 : -100);
const amperes = (t: number): number => {
  const since = t - half * Math.floor(t / half);
  const largest = 10 * Math.tanh(half / (2 * 0.0025));
  return (Math.floor(t / half) % 2 === 0 ? 1 : -1) * (10 - (10 + largest) * Math.exp(-since / 0.0025));
};
// 833.3 samples a cycle: edges fall between samples.
const record = { sampleRateHz: 50_000, durationS: 0.077 };
const power = powerOf(volts, amperes, record);

test('the current starts at −9.31110 A, as the example has it', () => {
  expect(Math.abs(amperes(0) + 9.3111)).toBeLessThan(5.1e-6);
});

test('a square wave into R and L: power and apparent power of the closed form', () => {
  // Both edges of a cycle off by half a sample move v·i by 2 · 1862 VA for 1/1667 of a cycle: 2.2 W, at most.
  expect(Math.abs(numberOf(power.activeW) - 441.33423)).toBeLessThan(2.2);
  expect(Math.abs(numberOf(power.apparentVA) / (100 * 6.643299) - 1)).toBeLessThan(1e-3);
  // Orders 1, 3, 5, 7, 9: active power is I²·R of each. An edge half a sample off turns a phase by k · 0.2°
  // and a sampled jump holds aliases of k/833: 0.5 % of the first.
  [429.2669, 0, 10.0133, 0, 1.3971, 0, 0.3715, 0, 0.1372].forEach((activeW, k) => {
    expect(Math.abs(power.harmonics[k]!.activeW - activeW)).toBeLessThan(0.005 * 429.2669);
  });
  expect(Math.abs(numberOf(power.fundamentalActiveW) - 429.2669)).toBeLessThan(0.005 * 429.2669);
});

test('its uncertainty holds what sampled edges may be off by', () => {
  expect(Math.abs(numberOf(power.activeW) - 441.33423)).toBeLessThan(uncertaintyOf(power.activeW));
  expect(Math.abs(numberOf(power.apparentVA) - 664.3299)).toBeLessThan(uncertaintyOf(power.apparentVA));
});

test('the load is called inductive', () => {
  const sampled = (wave: (t: number) => number): Float64Array =>
    Float64Array.from({ length: 3850 }, (_, n) => wave(n / record.sampleRateHz));
  const voltage = measureWave(inputOf(sampled(volts), record.sampleRateHz)).figures;
  const current = measureWave(inputOf(sampled(amperes), record.sampleRateHz)).figures;
  expect(loadKind({ power, voltage, current }).kind).toBe('inductive');
});
