import { expect, test } from 'vitest';
import { loadKind } from '../../../src/judge/loadKind.ts';
import { measureWave } from '../../../src/measure/measureWave.ts';
import { measurePower } from '../../../src/measure/power/measurePower.ts';
import { inputOf } from '../inputOf.ts';
import { numberOf } from './figureNumbers.ts';
import { measuredVoltage } from './measured.ts';
import { rectifierCycle, referenceLoad } from './rectifierLoad.ts';

// 1000 VA on a stiff sine of 230 V, 50 Hz, sampled at 40 kS/s for 4.6 cycles.
const load = referenceLoad(1000, 230, 50);
const perCycle = 800;
const every = 25;
const cycle = rectifierCycle(load, perCycle * every);
const count = Math.round(4.6 * perCycle);
const start = 137;
const volts = Float64Array.from(
  { length: count },
  (_, n) => load.peakV * Math.sin((2 * Math.PI * (n + start)) / perCycle),
);
const amperes = Float64Array.from({ length: count }, (_, n) => cycle[((n + start) % perCycle) * every]!);
const rate = perCycle * 50;
const power = measurePower({ voltage: measuredVoltage(volts, rate), current: inputOf(amperes, rate) });
const current = measureWave(inputOf(amperes, rate), { orders: 40 }).figures;

// The same circuit simulated on its own in Python (numpy), on a stiff sine. S and power factor are not the
// standard's nominal ones, which presume a supply that droops.
test('the circuit of IEC 62040-3 annex E (formulas from memory) has the component values that follow', () => {
  expect(Math.abs(load.loadOhm - 119.2975)).toBeLessThan(5.1e-5);
  expect(Math.abs(load.seriesOhm - 2.116)).toBeLessThan(5.1e-5);
  expect(Math.abs(1e6 * load.capacitanceF - 1257.4)).toBeLessThan(0.051);
});

test('powers of the rectifier load: as simulated independently, to the digits given', () => {
  // Kinks of the current between samples cost (1/800)² of the slope's change: under 1e-4.
  const near = (value: number, expected: number, digit: number): void =>
    expect(Math.abs(value - expected)).toBeLessThan(digit / 2 + 2e-4 * expected);
  near(numberOf(current.rms), 5.2009, 1e-4);
  near(numberOf(power.apparentVA), 1196.2, 0.1);
  near(numberOf(power.activeW), 789.2, 0.1);
  near(numberOf(power.powerFactor), 0.6597, 1e-4);
  near(numberOf(current.max) / numberOf(current.rms), 2.631, 1e-4);
  // The cycle that peaks are read from is the series with what folds on top of it: it rounds a kinked peak.
  expect(Math.abs(numberOf(current.crestFactor) / 2.631 - 1)).toBeLessThan(0.003);
  near(numberOf(current.thdPercent), 113.45, 0.01);
  near(current.harmonics[2]!.percent, 86.03, 0.01);
  near(current.harmonics[4]!.percent, 62.26, 0.01);
  near(current.harmonics[6]!.percent, 35.44, 0.01);
  // A pure sine carries power at the fundamental alone; the method is held to 0.01 % of S.
  expect(Math.abs(numberOf(power.harmonicActiveW))).toBeLessThan(1e-4 * 1196.2);
  expect(numberOf(power.voltageDistortionVar)).toBeLessThan(1e-4 * 1196.2);
});

test('the load is called a rectifier', () => {
  const voltage = measureWave(inputOf(volts, rate)).figures;
  expect(loadKind({ power, voltage, current }).kind).toBe('rectifier');
});
