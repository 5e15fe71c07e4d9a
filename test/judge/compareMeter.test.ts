import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MeasureError } from '../../src/base/measureError.ts';
import { compareMeter } from '../../src/judge/compareMeter.ts';
import { meterAnswer } from '../../src/measure/meterAnswer.ts';
import { exactly, figuresWith, waveformOf } from '../assay/figuresWith.ts';

/** A wave of 100 V AC RMS on which an average-responding meter is off by that much. */
function waveWith(averageErrorPercent: number, changes = {}) {
  return figuresWith({
    acRms: exactly(100),
    averageResponding: exactly(100 + averageErrorPercent),
    ...changes,
  });
}

function compare(readingV: number, figures = waveWith(0), dcCoupled = false) {
  return compareMeter(meterAnswer({ readingV, values: figures, dcCoupled }), waveformOf('modified sine'));
}

describe('compareMeter', () => {
  it('calibrates the gain where nothing speaks against it', () => {
    const found = compare(101.3);
    expect(found).toMatchObject({ answer: 'calibrated', factor: 1.013, readingV: 101.3 });
    expect(found.message).toEqual({ code: 'meter.calibrated', factor: 1.013, isCredible: true });
  });

  it('doubts a factor far from 1 but still gives it', () => {
    expect(compare(84.9).message).toMatchObject({ isCredible: false });
    expect(compare(85.1).message).toMatchObject({ isCredible: true });
    expect(compare(170)).toMatchObject({ answer: 'calibrated', factor: 1.7 });
  });

  it.each([10, 20, 50, 100, 200, 500, 1000])('proposes the round ratio %s and its inverse', (ratio) => {
    for (const off of [0.95, 1, 1.05]) {
      expect(compare(100 * ratio * off)).toMatchObject({ answer: 'scale', factor: ratio });
      expect(compare((100 / ratio) * off)).toMatchObject({ answer: 'scale', factor: 1 / ratio });
    }
    expect(compare(100 * ratio).message).toMatchObject({ code: 'meter.scale', ratio });
  });

  it('proposes a ratio through a meter that is not true-RMS as well', () => {
    // A three-level wave that conducts half of the time, behind a probe of 100: the meter shows −21.46 %.
    expect(compare(100 * 78.5398, waveWith(-21.4602))).toMatchObject({ answer: 'scale', factor: 100 });
  });

  it.each([
    // How far an average-responding meter is off, in percent: π/(2√2) · mean|v| / RMS, closed form.
    ['square', 11.0721],
    ['triangle', -3.8088],
    ['trapezoid, ramps of 30°', 4.9532],
    ['sine clipped at 0.8 of its peak', 1.6992],
    ['sine with 10 % third harmonic in phase', 2.8205],
    ['sine with 10 % third harmonic against it', -3.8131],
    ['staircase of five levels, 12° and 48°', -1.633],
    ['three levels, conducting 160°', 4.7198],
    ['three levels, conducting 120°', -9.31],
    ['three levels, conducting 90°', -21.4602],
    ['three levels, conducting 60°', -35.8725],
  ])('recognises a meter that is not true-RMS on a %s', (_, errorPercent) => {
    const found = compare(100 + errorPercent, waveWith(errorPercent));
    expect(found.answer).toBe('average');
    expect(found.factor).toBe((100 + errorPercent) / 100);
    expect(found.message).toMatchObject({ code: 'meter.average', kind: 'modified sine', fileV: 100 });
    // And a true-RMS meter on the same wave is taken for one.
    expect(compare(100, waveWith(errorPercent)).answer).toBe('calibrated');
  });

  it.each([
    ['sine', 0],
    ['trapezoid, ramps of 60°', -0.6541],
    ['three levels, conducting 144°', -0.6541],
  ])('cannot tell the kinds of meter apart on a %s, and calibrates', (_, errorPercent) => {
    expect(compare(100 + errorPercent, waveWith(errorPercent)).answer).toBe('calibrated');
  });

  it('recognises it through the doubt of scope and probe where the wave makes the difference large', () => {
    const square = waveWith(11.0721);
    expect(compare(111.0721 * 1.04, square).answer).toBe('average'); // 15.5 % off the RMS
    expect(compare(111.0721 * 0.97, square).answer).toBe('average'); // 7.7 % off the RMS
    expect(compare(104, square).answer).toBe('calibrated'); // 4 % off the RMS, 6.4 % off the average
  });

  it('compares with the RMS without DC, unless the meter counts DC in', () => {
    // 100 V AC on 75 V DC: 125 V.
    const figures = waveWith(0, { rms: exactly(125) });
    expect(compare(100, figures).factor).toBe(1);
    expect(compare(125, figures, true).factor).toBe(1);
  });

  it('refuses a reading that is none, and a file without AC voltage', () => {
    for (const reading of [0, -120, Number.NaN, Number.POSITIVE_INFINITY])
      expect(codeOf(() => compare(reading))).toBe('meter.reading');
    expect(codeOf(() => compare(120, waveWith(0, { acRms: { value: null, reason: 'no samples' } })))).toBe(
      'meter.incomparable',
    );
    expect(codeOf(() => compare(120, waveWith(0, { acRms: exactly(0) })))).toBe('meter.incomparable');
  });

  it('always gives a positive factor, and a calibration that lands on the reading', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 1e5, noNaN: true }),
        fc.double({ min: -50, max: 12, noNaN: true }),
        (readingV, errorPercent) => {
          const { answer, factor } = compare(readingV, waveWith(errorPercent));
          expect(factor).toBeGreaterThan(0);
          if (answer !== 'scale') expect(factor).toBe(readingV / 100);
        },
      ),
    );
  });
});

function codeOf(act: () => unknown): string {
  try {
    act();
  } catch (error) {
    if (error instanceof MeasureError) return error.code;
    throw error;
  }
  return 'nothing thrown';
}
