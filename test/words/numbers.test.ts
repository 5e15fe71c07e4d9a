import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bindUnits,
  decimalText,
  groupedText,
  significantText,
  uncertaintyDecimals,
} from '../../src/words/numbers.ts';
import {
  besideLimit,
  figureParts,
  figureText,
  limitText,
  marginText,
  quantityParts,
} from '../../src/words/quantities.ts';

describe('decimalText', () => {
  it.each([
    [-1234.56, 1, '\u22121234.6'],
    [1234.56, -2, '1200'],
    [1250, -2, '1300'],
    [0, 2, '0.00'],
    [-0.004, 2, '0.00'],
    [-0, 0, '0'],
    [-1.195e15, -13, '\u22121.20e15'],
    [999_999_999, 0, '999999999'],
    [2.5e-100, 101, '2.5e\u2212100'],
    [0, 101, '0'],
  ])('decimalText(%d, %d) is %s', (value, decimals, text) => {
    expect(decimalText(value, decimals)).toBe(text);
  });

  it('refuses what is no number', () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => decimalText(value, 1)).toThrow(RangeError);
    }
  });
});

describe('uncertaintyDecimals', () => {
  it.each([
    [0.0234, 3],
    [0.41, 1],
    [0.0294, 3],
    [0.0296, 2],
    [0.0999, 2],
    [1.24, 1],
    [3.6, 0],
    [12, 0],
    [36, -1],
    [150, -1],
    [400, -2],
  ])('an uncertainty of %d is printed to %d decimals', (uncertainty, decimals) => {
    expect(uncertaintyDecimals(uncertainty)).toBe(decimals);
  });

  it('rounds an uncertainty by 17 % of itself at most', () => {
    // The worst case is the least that gets one digit, 2.95 to 3: half a unit in 2.95.
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 1e6, noNaN: true }), (uncertainty) => {
        const step = 10 ** -uncertaintyDecimals(uncertainty);
        expect(step / 2 / uncertainty).toBeLessThanOrEqual((0.5 / 2.95) * (1 + 1e-12));
      }),
    );
  });

  it('refuses zero and less', () => {
    for (const uncertainty of [0, -1, Number.NaN]) {
      expect(() => uncertaintyDecimals(uncertainty)).toThrow(RangeError);
    }
  });
});

describe('figureParts and figureText', () => {
  it.each([
    [119.8234, 0.0931, '119.82', '0.09'],
    [119.8234, 3.6, '120', '4'],
    [59.99742, 0.0031, '59.997', '0.003'],
    [2.13, 0.41, '2.1', '0.4'],
    [1.4137, 0.0124, '1.414', '0.012'],
    [-0.04, 1.2, '0.0', '1.2'],
    [-2.04, 1.2, '\u22122.0', '1.2'],
    [118, 12, '118', '12'],
    [1234, 36, '1230', '40'],
  ])('%d with an uncertainty of %d reads %s ± %s', (value, uncertainty, text, doubt) => {
    expect(figureParts({ value, uncertainty })).toEqual({ value: text, uncertainty: doubt });
    expect(figureText({ value, uncertainty }, 'V')).toBe(`${text}\u00a0±\u00a0${doubt}\u00a0V`);
  });

  it('prints no uncertainty where it is zero, and says when a figure is missing', () => {
    expect(figureText({ value: 125_000, uncertainty: 0 }, 'Hz')).toBe('125000\u00a0Hz');
    expect(figureText({ value: null, reason: 'no period' }, 'Hz')).toBe('not measurable');
    expect(figureText({ value: 1.392, uncertainty: 0.01 }, '')).toBe('1.392\u00a0±\u00a00.010');
  });
});

describe('significantText', () => {
  it.each([
    [0.66781, 3, '0.668'],
    [253, 3, '253'],
    [0.5, 3, '0.5'],
    [1500, 3, '1500'],
    [99.96, 3, '100'],
    [0, 4, '0'],
    [-1.5, 2, '\u22121.5'],
    [1e-100, 3, '1.00e\u2212100'],
    [1e20, 3, '1.00e20'],
  ])('significantText(%d, %d) is %s', (value, digits, text) => {
    expect(significantText(value, digits)).toBe(text);
  });
});

describe('limitText', () => {
  it('reads both sides, one, or none', () => {
    expect(limitText({ min: 207, max: 253 }, 'V')).toBe('207 to 253\u00a0V');
    expect(limitText({ max: 0.5 }, '%')).toBe('at most 0.5\u00a0%');
    expect(limitText({ min: 4 }, '')).toBe('at least 4');
    expect(limitText({}, 'V')).toBe('no limit');
  });
});

describe('besideLimit', () => {
  it.each([
    [6.213, { max: 8 }, '6.2'],
    [0.6234, { max: 0.5 }, '0.62'],
    [0.5004, { max: 0.5 }, '0.5004'],
    [0.04, { max: 3 }, '0.04'],
    [119.83, { min: 108, max: 126 }, '119.8'],
    [1.4137, { min: 1.38, max: 1.45 }, '1.41'],
    [126.04, { min: 108, max: 126 }, '126.04'],
    [12.345, {}, '12.3'],
  ])('%d beside %j reads %s', (value, limit, text) => {
    expect(besideLimit(value, limit)).toBe(text);
  });
});

describe('marginText', () => {
  it('says how far on which side, percent as points', () => {
    expect(marginText({ margin: -0.1234, side: 'outside' }, '%')).toBe('outside by 0.12\u00a0points');
    expect(marginText({ margin: 6.51, side: 'inside' }, 'V')).toBe('inside by 6.5\u00a0V');
    expect(marginText({ margin: 0, side: 'inside' }, 'V')).toBe('on the limit');
  });
});

describe('quantityParts', () => {
  it('takes the unit off the end', () => {
    expect(quantityParts('harmonic 5 (% of fundamental)')).toEqual({
      name: 'harmonic 5',
      unit: '%',
      base: '',
    });
    expect(quantityParts('THD to order 50 (% of nominal)')).toEqual({
      name: 'THD to order 50',
      unit: '%',
      base: 'of nominal',
    });
    expect(quantityParts('RMS voltage (V)')).toEqual({ name: 'RMS voltage', unit: 'V', base: '' });
    expect(quantityParts('crest factor')).toEqual({ name: 'crest factor', unit: '', base: '' });
  });
});

describe('holdUnits and groupedText', () => {
  it('hold a number to its unit and its groups together', () => {
    expect(bindUnits('set 5 ms/div, gain 3 %, 12 volts')).toBe('set 5\u00a0ms/div, gain 3\u00a0%, 12 volts');
    expect(groupedText(2_000_000)).toBe('2\u00a0000\u00a0000');
    expect(groupedText(9999)).toBe('9999');
  });
});
