import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MeasureError } from '../../../src/base/measureError.ts';
import { claimedNominal } from '../../../src/judge/claims/judgeClaim.ts';
import { parseClaim } from '../../../src/judge/claims/parseClaim.ts';

describe('parseClaim', () => {
  it.each([
    ['pure sine', 'pure sine'],
    ['Pure  Sine Wave', 'pure sine'],
    ['sinewave', 'pure sine'],
    ['pure sine waveform', 'pure sine'],
    ['modified sine', 'modified sine'],
    ['modified sinewave', 'modified sine'],
    ['square', 'square'],
    ['square wave', 'square'],
    ['stepped', 'stepped'],
  ])('takes "%s" for a claim of %s', (text, kind) => {
    expect(parseClaim(text)).toEqual({ text, quantity: 'waveform', kind });
  });

  it.each([
    // An even tolerance, in percent and in the unit; every way to write ±.
    ['120 V ±5 %', 'rmsV', { min: 114, max: 126 }, 120],
    ['120V±5%', 'rmsV', { min: 114, max: 126 }, 120],
    ['120 V +- 6 V', 'rmsV', { min: 114, max: 126 }, 120],
    ['120 V +/-5 %', 'rmsV', { min: 114, max: 126 }, 120],
    ['120 V +/\u2212 5 %', 'rmsV', { min: 114, max: 126 }, 120],
    ['120\u00a0V \u00b1\u00a05\u00a0%', 'rmsV', { min: 114, max: 126 }, 120],
    ['120 VAC ±5 %', 'rmsV', { min: 114, max: 126 }, 120],
    ['120 V RMS ±5 %', 'rmsV', { min: 114, max: 126 }, 120],
    ['RMS voltage: 120 V ±5 %', 'rmsV', { min: 114, max: 126 }, 120],
    ['60 Hz ±0.5 Hz', 'frequencyHz', { min: 59.5, max: 60.5 }, 60],
    ['60 hz ±0,5 Hz', 'frequencyHz', { min: 59.5, max: 60.5 }, 60],
    ['50 Hz ±1 %', 'frequencyHz', { min: 49.5, max: 50.5 }, 50],
    ['frequency 60 Hz ±0.5 Hz', 'frequencyHz', { min: 59.5, max: 60.5 }, 60],
    ['crest 1.4 ±0.05', 'crestFactor', { min: 1.4 - 0.05, max: 1.4 + 0.05 }, 1.4],
    ['crest factor 1.5 ±10 %', 'crestFactor', { min: 1.35, max: 1.65 }, 1.5],
    // An uneven one.
    ['230 V +6/-10 %', 'rmsV', { min: 207, max: 243.8 }, 230],
    ['230 V +6 % / -10 %', 'rmsV', { min: 207, max: 243.8 }, 230],
    ['230 V +6 % \u221210 %', 'rmsV', { min: 207, max: 243.8 }, 230],
    ['230 V -10/+6 %', 'rmsV', { min: 207, max: 243.8 }, 230],
    ['230 V +10 V/-20 V', 'rmsV', { min: 210, max: 240 }, 230],
    // A range.
    ['110..127 V', 'rmsV', { min: 110, max: 127 }, null],
    ['110 V to 127 V', 'rmsV', { min: 110, max: 127 }, null],
    ['110\u2013127 V', 'rmsV', { min: 110, max: 127 }, null],
    ['110…127 V', 'rmsV', { min: 110, max: 127 }, null],
    ['crest 1.38..1.45', 'crestFactor', { min: 1.38, max: 1.45 }, null],
    ['crest factor 1.38 to 1.45', 'crestFactor', { min: 1.38, max: 1.45 }, null],
    ['crest 1,38..1,45', 'crestFactor', { min: 1.38, max: 1.45 }, null],
    // A bound.
    ['THD < 3 %', 'thdPercent', { max: 3 }, null],
    ['THD <= 3%', 'thdPercent', { max: 3 }, null],
    ['thd≤3', 'thdPercent', { max: 3 }, null],
    ['voltage > 110 V', 'rmsV', { min: 110 }, null],
    ['>= 110 V', 'rmsV', { min: 110 }, null],
    ['crest < 1.5', 'crestFactor', { max: 1.5 }, null],
    // A value alone.
    ['120 V', 'rmsV', null, 120],
    ['60 Hz', 'frequencyHz', null, 60],
    ['THD 3 %', 'thdPercent', null, 3],
  ])('reads "%s"', (text, quantity, limit, target) => {
    expect(parseClaim(text)).toEqual({ text, quantity, limit, target });
  });

  it.each([
    ['', 'value'],
    ['nice sine', 'value'],
    ['5 A', 'value'],
    ['120 V ±', 'value'],
    ['THD < -3 %', 'value'],
    ['120 ±5 %', 'quantity'],
    ['< 3 %', 'quantity'],
    ['1.38..1.45', 'quantity'],
    ['120 V ±5', { toleranceIn: 'V' }],
    ['230 V +6/-10', { toleranceIn: 'V' }],
    ['60 Hz ±1 V', 'unit of value'],
    ['THD 3 % ±1 %', 'no percent of percent'],
    ['THD < 3 V', { unit: '%', not: 'V' }],
    ['crest 1.4 V..1.5 V', { unit: null, not: 'V' }],
    ['110 V..127 Hz', 'one unit of ends'],
    ['230 V +6 V/-10 %', 'one unit of tolerances'],
    ['127..110 V', 'order of ends'],
  ])('refuses "%s" for what it lacks: %j', (text, lacks) => {
    const found = thrownBy(() => parseClaim(text));
    expect(found).toBeInstanceOf(MeasureError);
    expect(found).toMatchObject({ code: 'claim.grammar', facts: { text, lacks } });
  });

  it('never gives a limit that holds nothing', () => {
    const number = fc.integer({ min: 1, max: 400 });
    fc.assert(
      fc.property(number, number, number, (target, below, above) => {
        const claim = parseClaim(`${target} V +${above}/-${below} %`);
        if (claim.quantity === 'waveform' || claim.limit === null) throw new Error('a tolerance was lost');
        const { min = Number.NaN, max = Number.NaN } = claim.limit;
        expect(min).toBeLessThan(target);
        expect(max).toBeGreaterThan(target);
      }),
    );
  });
});

describe('claimedNominal', () => {
  const nominalOf = (...texts: string[]) => claimedNominal(texts.map(parseClaim));

  it('takes values with a tolerance or alone, the first of several', () => {
    expect(nominalOf('pure sine', '120 V ±5 %', '60 Hz')).toEqual({ voltageV: 120, frequencyHz: 60 });
    expect(nominalOf('230 V +6/-10 %', '220 V')).toEqual({ voltageV: 230 });
  });

  it('takes nothing from a range, a bound or another quantity', () => {
    expect(nominalOf('110..127 V', 'THD < 3 %', 'crest 1.4 ±0.1')).toEqual({});
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
