import { expect, test } from 'vitest';
import { MeasureError } from '../../../src/base/measureError.ts';
import {
  type DirectPowerFigures,
  measureDirectPower,
} from '../../../src/measure/power/measureDirectPower.ts';
import { inputOf } from '../inputOf.ts';
import { numberOf, uncertaintyOf } from './figureNumbers.ts';

const rate = 10_000;
// A 24 V battery that sags by 0.5 V as an inverter draws its current at twice 50 Hz: 20 A ± 20 A.
const pulse = (n: number): number => Math.cos((2 * Math.PI * 100 * n) / rate);
const volts = (n: number): number => 24 - 0.5 * pulse(n);
const amperes = (n: number): number => 20 + 20 * pulse(n);
const record = (wave: (n: number) => number, count = 1000): Float64Array =>
  Float64Array.from({ length: count }, (_, n) => wave(n));
const directOf = (v: Float64Array, i: Float64Array, periodS?: number): DirectPowerFigures =>
  measureDirectPower({
    voltage: inputOf(v, rate),
    current: inputOf(i, rate),
    ...(periodS === undefined ? {} : { periodS }),
  });

test('the mean of volts times amperes, less than the product of the means where the battery sags', () => {
  const direct = directOf(record(volts), record(amperes));
  // 24·20 − ½·0.5·20
  expect(Math.abs(numberOf(direct.activeW) - 475)).toBeLessThan(1e-9);
  expect(Math.abs(numberOf(direct.meanV) - 24)).toBeLessThan(1e-12);
  expect(Math.abs(numberOf(direct.meanA) - 20)).toBeLessThan(1e-12);
  expect(Math.abs(numberOf(direct.rippleV) - 0.5 / Math.SQRT2)).toBeLessThan(1e-12);
  expect(Math.abs(numberOf(direct.rippleCurrentPercent) - 100 / Math.SQRT2)).toBeLessThan(1e-9);
  expect(Math.abs(numberOf(direct.rippleVoltagePercent) - 100 * (0.5 / Math.SQRT2 / 24))).toBeLessThan(1e-9);
  expect(direct.notices).toEqual([]);
});

test('with the period of the AC side told, a record that ends in mid-cycle gives the same', () => {
  const broken = directOf(record(volts, 1057), record(amperes, 1057), 0.02);
  expect(Math.abs(numberOf(broken.activeW) - 475)).toBeLessThan(0.01);
  const untold = directOf(record(volts, 1057), record(amperes, 1057));
  expect(Math.abs(numberOf(untold.activeW) - 475)).toBeGreaterThan(1);
});

test('a missing sample is left out', () => {
  const constant = record(() => 12);
  const holed = constant.map((x, n) => (n % 7 === 3 ? Number.NaN : x));
  const direct = directOf(holed, constant);
  expect(Math.abs(numberOf(direct.activeW) - 144)).toBeLessThan(1e-9);
  expect(() =>
    directOf(
      constant.map(() => Number.NaN),
      constant,
    ),
  ).toThrow(MeasureError);
  expect(() => directOf(constant, constant.subarray(1))).toThrow(RangeError);
});

test('the uncertainty is that of two gains, two ratios and two offsets', () => {
  const direct = directOf(
    record(() => 24),
    record(() => 20),
  );
  // Standard uncertainties, % of the power: gain 3/√3, ratio 2/√3 and offset 1/√3 of each channel.
  const combined = Math.sqrt((2 * (9 + 4 + 1)) / 3);
  const ratio = uncertaintyOf(direct.activeW) / ((combined / 100) * 480);
  // Six rectangles come near a normal distribution, from below: k between 1.9 and 2.
  expect(ratio).toBeGreaterThan(1.9);
  expect(ratio).toBeLessThan(2);
});

test('a clamp the wrong way round is told', () => {
  const direct = directOf(
    record(volts),
    record((n) => -amperes(n)),
  );
  expect(direct.notices.map(({ code }) => code)).toEqual(['power.negative']);
});
