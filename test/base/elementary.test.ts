import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { globSync } from 'tinyglobby';
import { describe, expect, test } from 'vitest';
import {
  asin,
  atan2,
  binaryExponent,
  cos,
  decimalExponent,
  exp,
  log,
  log2,
  log10,
  powerOfTen,
  sin,
  wholePower,
} from '../../src/base/elementary.ts';

/** The distance of two numbers in units of the last place of the second. */
function placesApart(a: number, b: number): number {
  if (Object.is(a, b) || a === b) return 0;
  return Math.abs(a - b) / 2 ** (binaryExponent(b) - 52);
}

const number = (size: number) => fc.double({ min: -size, max: size, noNaN: true });
const above = fc.double({ min: 1e-300, max: 1e300, noNaN: true });

describe('the functions that engines may round each in its way', () => {
  test.each([
    ['sin', sin, Math.sin, number(1e7), 2],
    ['cos', cos, Math.cos, number(1e7), 2],
    ['asin', asin, Math.asin, number(1), 6],
    ['exp', exp, Math.exp, number(700), 2],
    ['log', log, Math.log, above, 2],
    ['log2', log2, Math.log2, above, 2],
    ['log10', log10, Math.log10, above, 2],
  ] as const)('%s is that of the engine but for the last places', (_, own, engine, from, places) => {
    fc.assert(
      fc.property(from, (x) => placesApart(own(x), engine(x)) <= places),
      { numRuns: 20_000 },
    );
  });

  test('atan2 is that of the engine but for the last places, in all quarters and on the axes', () => {
    fc.assert(
      fc.property(number(1e3), number(1e3), (y, x) => placesApart(atan2(y, x), Math.atan2(y, x)) <= 6),
      { numRuns: 20_000 },
    );
    const edges = [0, -0, 1, -1, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const y of edges) for (const x of edges) expect(atan2(y, x)).toBe(Math.atan2(y, x));
  });

  test('sine and cosine are as near to nothing at the doubles next to π and π/2 as those lie to them', () => {
    // π − fl(π) and half of it: the next digits of π, 1.2246467991473531772e-16.
    expect(sin(Math.PI)).toBe(1.2246467991473532e-16);
    expect(cos(Math.PI / 2)).toBe(6.123233995736766e-17);
  });

  test('far out they keep to the circle', () => {
    for (const x of [1e9, 1e12, 1e15]) expect(Math.abs(sin(x) ** 2 + cos(x) ** 2 - 1)).toBeLessThan(1e-15);
  });

  test('what is no number, or at the end of the range, is as in the engine', () => {
    for (const x of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
      expect(sin(x)).toBeNaN();
      expect(cos(x)).toBeNaN();
      expect(exp(x)).toBe(Math.exp(x));
      expect(log(x)).toBe(Math.log(x));
    }
    expect([exp(710), exp(-746), log(0), log(-1)]).toEqual([
      Number.POSITIVE_INFINITY,
      0,
      Number.NEGATIVE_INFINITY,
      Number.NaN,
    ]);
    expect(placesApart(log(5e-324), Math.log(5e-324))).toBeLessThanOrEqual(1);
  });

  test('powers and exponents are exact', () => {
    for (let e = -1000; e <= 1000; e += 7) expect(log2(2 ** e)).toBe(e);
    for (let e = -300; e <= 300; e++) {
      expect(powerOfTen(e)).toBe(Number.parseFloat(`1e${e}`));
      expect(decimalExponent(powerOfTen(e))).toBe(e);
    }
    expect([decimalExponent(999.9999), decimalExponent(1000), decimalExponent(-0.05)]).toEqual([2, 3, -2]);
    expect([wholePower(3, 0), wholePower(3, 4), wholePower(-0.5, 3)]).toEqual([1, 81, -0.125]);
    expect([binaryExponent(1), binaryExponent(0.75), binaryExponent(5e-324)]).toEqual([0, -1, -1074]);
  });
});

test('no room of the core calls a function that engines round each in its way', () => {
  const files = globSync(['src/**/*.ts', '!src/{cli,page}/**', '!src/base/elementary.ts']);
  expect(files.length).toBeGreaterThan(250);
  // A root and a square are rounded alike everywhere; so is a power of two.
  const loose =
    /\bMath\.(sin|cos|tan|asin|acos|atan2?|sinh|cosh|tanh|asinh|acosh|atanh|exp|expm1|log|log1p|log2|log10|pow|hypot|cbrt)\b|(?<!\b2) \*\* (?!2\b)/;
  const code = (file: string): string => readFileSync(file, 'utf8').replace(/\/\*\*[\s\S]*?\*\//g, '');
  expect(files.filter((file) => loose.test(code(file)))).toEqual([]);
});
