import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MeasureError } from '../../../src/base/measureError.ts';
import { parseNominal } from '../../../src/judge/nominal/mainsNominals.ts';

describe('parseNominal', () => {
  it.each([
    ['120V/60Hz', { voltageV: 120, frequencyHz: 60 }],
    ['  230 V / 50 Hz ', { voltageV: 230, frequencyHz: 50 }],
    ['230 V 50 Hz', { voltageV: 230, frequencyHz: 50 }],
    ['230 VAC 50 Hz', { voltageV: 230, frequencyHz: 50 }],
    ['120v60hz', { voltageV: 120, frequencyHz: 60 }],
    ['120/60', { voltageV: 120, frequencyHz: 60 }],
    ['115,5 V/59,9 Hz', { voltageV: 115.5, frequencyHz: 59.9 }],
    ['120V', { voltageV: 120 }],
    ['120 V/', { voltageV: 120 }],
    ['60Hz', { frequencyHz: 60 }],
    ['/ 60 Hz', { frequencyHz: 60 }],
  ])('reads "%s"', (text, expected) => {
    expect(parseNominal(text)).toEqual(expected);
  });

  it.each(['', '120', 'V/Hz', '0V/60Hz', '120V/0Hz', '-120V', '60Hz/120V', '120V/60Hz/1', '1e3V', 'mains'])(
    'refuses "%s"',
    (text) => {
      const found = thrownBy(() => parseNominal(text));
      expect(found).toBeInstanceOf(MeasureError);
      expect(found).toMatchObject({ code: 'nominal.grammar', facts: { text } });
    },
  );

  it('reads back any pair of whole numbers', () => {
    const whole = fc.integer({ min: 1, max: 1000 });
    fc.assert(
      fc.property(whole, whole, (voltageV, frequencyHz) => {
        expect(parseNominal(`${voltageV} V/${frequencyHz} Hz`)).toEqual({ voltageV, frequencyHz });
      }),
    );
  });
});

function thrownBy(act: () => unknown): unknown {
  try {
    act();
  } catch (error) {
    return error;
  }
  return undefined;
}
