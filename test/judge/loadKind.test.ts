import { expect, test } from 'vitest';
import { capacitorDistortion, type LoadKind, loadKind } from '../../src/judge/loadKind.ts';
import { measureWave } from '../../src/measure/measureWave.ts';
import { measurePower } from '../../src/measure/power/measurePower.ts';
import { gaussianNumbers, randomNumbers } from '../../src/signal/randomNumbers.ts';
import { inputOf } from '../measure/inputOf.ts';
import { measuredVoltage } from '../measure/power/measured.ts';

const rate = 20_000;
const turn = 2 * Math.PI * 50;
type Wave = (timeS: number) => number;

/** The kind of load that draws `current` from `voltage`, over 5.3 cycles of 50 Hz. */
function kindOf(voltage: Wave, current: Wave): LoadKind {
  const sampled = (wave: Wave): Float64Array => Float64Array.from({ length: 2120 }, (_, n) => wave(n / rate));
  const [volts, amperes] = [sampled(voltage), sampled(current)];
  return loadKind({
    power: measurePower({ voltage: measuredVoltage(volts, rate), current: inputOf(amperes, rate) }),
    voltage: measureWave(inputOf(volts, rate)).figures,
    current: measureWave(inputOf(amperes, rate)).figures,
  });
}

const sine: Wave = (t) => 325 * Math.sin(turn * t);
/** 3 % of the fifth and 2 % of the eleventh order. */
const mains: Wave = (t) => sine(t) + 10 * Math.sin(5 * turn * t + 1) + 6.5 * Math.sin(11 * turn * t);
/** Current of a capacitor at `mains`: C·dv/dt, 5 A peak at the fundamental. */
const capacitor: Wave = (t) =>
  5 *
  (Math.cos(turn * t) +
    ((5 * 10) / 325) * Math.cos(5 * turn * t + 1) +
    ((11 * 6.5) / 325) * Math.cos(11 * turn * t));
/** Zero for a quarter of the time. */
const modified: Wave = (t) => {
  const s = Math.sin(turn * t);
  return Math.abs(s) < Math.sin(Math.PI / 8) ? 0 : 170 * Math.sign(s);
};

test('a heater is resistive on a sine, on distorted mains and on a modified sine', () => {
  for (const wave of [sine, mains, modified]) {
    const { kind, reasons } = kindOf(wave, (t) => wave(t) / 40);
    expect(kind).toBe('resistive');
    expect(reasons[0]).toBe('power factor 1.00: the current follows the voltage');
  }
});

test('a small heater under the noise of the clamp is still resistive', () => {
  const normal = gaussianNumbers(randomNumbers(8));
  const { kind, reasons } = kindOf(sine, (t) => sine(t) / 325 + 0.25 * normal());
  expect(kind).toBe('resistive');
  expect(reasons[0]).toMatch(/displacement power factor 1\.00$/);
});

test('a current that lags is inductive, one that leads capacitive', () => {
  const lagging = kindOf(mains, (t) => 5 * Math.sin(turn * t - 1));
  expect(lagging.kind).toBe('inductive');
  // cos 1 rad.
  expect(lagging.reasons[0]).toBe('the current lags: displacement power factor 0.54');
  expect(kindOf(sine, (t) => 5 * Math.sin(turn * t + 1)).kind).toBe('capacitive');
});

test("a capacitor is capacitive though it lifts the voltage's own harmonics", () => {
  expect(kindOf(mains, capacitor).kind).toBe('capacitive');
});

test('capacitorDistortion(harmonics) is the THD of a current proportional to the slope', () => {
  const harmonics = [
    { order: 1, rms: 230, percent: 100, phaseDeg: 0 },
    { order: 3, rms: 2.3, percent: 1, phaseDeg: 0 },
    { order: 4, rms: 2.3, percent: 1, phaseDeg: 0 },
  ];
  expect(capacitorDistortion(harmonics)).toBe(5);
});

test('pulses at the peaks are a rectifier; pulses beside a lagging current are mixed', () => {
  const pulses: Wave = (t) =>
    (12 * Math.sign(Math.sin(turn * t)) * Math.max(0, Math.abs(Math.sin(turn * t)) - 0.85)) / 0.15;
  expect(kindOf(sine, pulses).kind).toBe('rectifier');
  const both = kindOf(sine, (t) => pulses(t) + 6 * Math.sin(turn * t - Math.PI / 2));
  expect(both.kind).toBe('mixed');
  expect(both.reasons[1]).toMatch(/^the current lags/);
});

test('a half-wave is a rectifier, and said to be half-wave', () => {
  const { kind, reasons } = kindOf(sine, (t) => Math.max(0, sine(t)) / 40);
  expect(kind).toBe('rectifier');
  // Mean of a half-wave: peak / π = 325 / 40 / π.
  expect(reasons[0]).toBe('half-wave: the current has a mean of 2.6 A');
});

test('a clamp the wrong way round changes no kind', () => {
  expect(kindOf(sine, (t) => -sine(t) / 40).kind).toBe('resistive');
  expect(kindOf(sine, (t) => -5 * Math.sin(turn * t - 1)).kind).toBe('inductive');
});

test('a current of noise alone is not classified', () => {
  const normal = gaussianNumbers(randomNumbers(5));
  const { kind, reasons } = kindOf(sine, () => 0.01 * normal());
  expect(kind).toBe('not classified');
  expect(reasons[0]).toEqual({ code: 'current.noFundamental' });
});
