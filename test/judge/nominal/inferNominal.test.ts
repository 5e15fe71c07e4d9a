import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inferNominal } from '../../../src/judge/nominal/inferNominal.ts';
import type { ToldNominal } from '../../../src/judge/nominal/mainsNominals.ts';

function infer(volts: number, hertz: number, told?: ToldNominal) {
  const { nominal, notices } = inferNominal(
    { value: volts, uncertainty: volts * 0.03 },
    { value: hertz, uncertainty: 0.01 },
    told,
  );
  return { nominal, codes: notices.map(({ code }) => code), facts: notices };
}

/** "115 V 60 Hz". */
function outlet(words: string) {
  const [voltageV, frequencyHz] = words.match(/\d+/g)!.map(Number);
  return { voltageV, frequencyHz };
}

function proposals({ facts }: ReturnType<typeof infer>) {
  const suspect = facts.find(({ code }) => code === 'scale.suspect');
  return suspect?.code === 'scale.suspect' ? suspect.proposals : [];
}

describe('inferNominal', () => {
  // The definition of the inference: usual outlets within ±10 %, else the nearest of the others within ±5 %.
  it.each([
    [121, 60.02, 120, 60],
    [118.4, 59.97, 120, 60],
    [109, 60, 120, 60],
    [108, 60, 120, 60],
    [132, 60, 120, 60],
    [216, 60, 240, 60],
    [264, 60, 240, 60],
    [236, 60, 240, 60],
    [228, 49.95, 230, 50],
    [207, 50, 230, 50],
    [253, 50, 230, 50],
    [101.5, 50, 100, 50],
    [101.5, 60, 100, 60],
    [95, 60, 100, 60],
    [208, 60, 208, 60],
    [203, 60, 200, 60],
    [205, 60, 208, 60],
    [190, 60, 200, 60],
    [265, 60, 277, 60],
    [290, 60, 277, 60],
    // An engine at no load, 8 % above: still 50 and 60 Hz.
    [230, 54, 230, 50],
    [122, 64.8, 120, 60],
  ])('takes %s V at %s Hz for %s V %s Hz', (volts, hertz, voltageV, frequencyHz) => {
    expect(infer(volts, hertz).nominal).toEqual({ voltageV, frequencyHz, inferred: true });
  });

  it.each([
    [107.9, 60],
    [105.1, 60],
    [94.9, 60],
    [132.5, 60],
    [150, 60],
    [206, 50],
    [254, 50],
    [106, 50],
    [200, 50],
    [277, 50],
    [292, 60],
  ])('takes %s V at %s Hz for nothing, and says so', (volts, hertz) => {
    const found = infer(volts, hertz);
    expect(found.nominal).toBeNull();
    expect(found.codes).toContain('nominal.none');
  });

  it('says nothing where one outlet alone fits', () => {
    expect(infer(230, 50).codes).toEqual([]);
    expect(infer(240, 60).codes).toEqual([]);
    expect(infer(121, 60).codes).toEqual([]);
  });

  it.each([
    [109, 60, '110 V 60 Hz'],
    [113.3, 60, '110 V 60 Hz or 115 V 60 Hz'],
    [116, 60, '115 V 60 Hz'],
    [125, 60, '127 V 60 Hz'],
    [222, 50, '220 V 50 Hz'],
    [222, 60, '220 V 60 Hz'],
    [199, 50, '200 V 50 Hz'],
    [110, 50, '110 V 50 Hz'],
  ])('names at %s V %s Hz what an outlet is only told to be: %s', (volts, hertz, named) => {
    const found = infer(volts, hertz);
    expect(found.codes.filter((code) => code.startsWith('nominal.'))).toHaveLength(1);
    expect(found.facts).toContainEqual(expect.objectContaining({ others: named.split(' or ').map(outlet) }));
  });

  it('says how far a wave lies off the outlet that it is taken for', () => {
    expect(infer(109, 60).facts).toMatchObject([{ rmsV: 109, off: expect.closeTo(109 / 120 - 1, 12) }]);
    const high = infer(131.5, 60);
    expect(high.codes).toEqual(['nominal.off']);
    expect(high.facts).toMatchObject([{ rmsV: 131.5, off: expect.closeTo(131.5 / 120 - 1, 12) }]);
    expect(infer(114.1, 60).facts).toMatchObject([{ off: null }]);
  });

  it('names the other frequency where both ranges overlap', () => {
    const found = infer(230, 52);
    expect(found.nominal?.frequencyHz).toBe(50);
    expect(found.facts).toMatchObject([{ others: [outlet('240 V 60 Hz')] }]);
    expect(infer(100, 52).facts).toMatchObject([{ others: [outlet('100 V 60 Hz')] }]);
  });

  it('lets the frequency decide before the voltage: 122 V at 52 Hz is no 60 Hz outlet', () => {
    const found = infer(122, 52);
    expect(found.nominal).toBeNull();
    expect(found.facts).toContainEqual({ code: 'scale.half', rmsV: 122, wholeV: 230 }); // 244/230 = 1.06
  });

  it('lets a nominal of the unit stand as told, and still names what else is possible', () => {
    const found = infer(109, 60, { voltageV: 120, frequencyHz: 60, ofUnit: true });
    expect(found.nominal).toEqual({ voltageV: 120, frequencyHz: 60, inferred: false });
    expect(found.facts).toMatchObject([{ others: [outlet('110 V 60 Hz')] }]);
    expect(infer(109, 60, { voltageV: 120, frequencyHz: 60 }).codes).toEqual([]);
  });

  it.each([9.6, 6, 25, 16.7, 400, 60_000])('finds no nominal at %s Hz and doubts the time axis', (hertz) => {
    const found = infer(120, hertz);
    expect(found.nominal).toBeNull();
    expect(found.codes).toEqual(['frequency.suspect']);
    expect(found.codes).toEqual(['frequency.suspect']);
  });

  it('believes a frequency that was told', () => {
    expect(infer(115, 400, { voltageV: 115, frequencyHz: 400 })).toMatchObject({
      nominal: { voltageV: 115, frequencyHz: 400, inferred: false },
      codes: [],
    });
  });

  it('lets what was told stand and infers the other half', () => {
    expect(infer(95, 60, { voltageV: 120, frequencyHz: 60 }).nominal).toEqual({
      voltageV: 120,
      frequencyHz: 60,
      inferred: false,
    });
    expect(infer(95, 60, { voltageV: 127 }).nominal).toEqual({
      voltageV: 127,
      frequencyHz: 60,
      inferred: true,
    });
    expect(infer(228, 47, { frequencyHz: 50 }).nominal).toEqual({
      voltageV: 230,
      frequencyHz: 50,
      inferred: true,
    });
  });

  it('keeps a told nominal beside a wrong time axis, and doubts the axis', () => {
    const found = infer(120, 9.6, { voltageV: 120, frequencyHz: 60 });
    expect(found.nominal?.voltageV).toBe(120);
    expect(found.codes).toEqual(['frequency.suspect']);
    expect(infer(120, 9.6, { voltageV: 120 }).nominal).toBeNull();
  });

  it('proposes the probe ratios that would land on an outlet, nearest first', () => {
    const found = infer(1.2, 60);
    expect(found.nominal).toBeNull();
    expect(found.codes).toEqual(['scale.suspect']);
    expect(proposals(found)).toMatchObject([
      { ratio: 100, landsOnV: 120 },
      { ratio: 200, landsOnV: 240 },
    ]);
    expect(proposals(infer(23, 50))).toContainEqual({ ratio: 10, landsOnV: 230 });
    // A ratio applied by the scope and once more by the export.
    expect(proposals(infer(12_000, 60))).toContainEqual({ ratio: 0.01, landsOnV: 120 });
  });

  it('doubts volts far from every outlet, with no ratio to propose', () => {
    const found = infer(1.65, 50); // times 50, 100 and 200: 82.5, 165 and 330 V
    expect(found.codes).toEqual(['scale.suspect']);
    expect(found.facts).toContainEqual({ code: 'scale.suspect', rmsV: 1.65, proposals: [] });
  });

  it('doubts the scale against a nominal that was told', () => {
    const found = infer(1.15, 60, { voltageV: 115, frequencyHz: 60 });
    expect(found.nominal?.voltageV).toBe(115);
    expect(proposals(found)).toContainEqual({ ratio: 100, landsOnV: 115 });
  });

  it.each([
    [60, 60, 120, null],
    [115, 50, 230, null],
    [50, 50, 100, null],
  ])('asks at %s V %s Hz whether it is one leg of %s V', (volts, hertz, whole, taken) => {
    const found = infer(volts, hertz);
    expect(found.codes).toContain('scale.half');
    expect(found.facts).toContainEqual({ code: 'scale.half', rmsV: volts, wholeV: whole });
    expect(found.nominal?.voltageV ?? null).toBe(taken);
  });

  it('does not take every 120 V outlet for half of 240 V', () => {
    fc.assert(
      fc.property(fc.double({ min: 110, max: 143, noNaN: true }), (volts) => {
        expect(infer(volts, 60).codes).not.toContain('scale.half');
      }),
    );
  });

  it('finds no nominal where nothing fits or nothing was measured, and says so', () => {
    expect(infer(160, 60)).toMatchObject({ nominal: null, codes: ['nominal.none'] });
    const missing = { value: null, reason: 'no period' };
    expect(inferNominal({ value: 12, uncertainty: 0.1 }, missing).notices.map((n) => n.code)).toEqual([
      'nominal.none',
    ]);
    expect(inferNominal(missing, missing, { voltageV: 120, frequencyHz: 60 })).toEqual({
      nominal: { voltageV: 120, frequencyHz: 60, inferred: false },
      others: [],
      notices: [],
    });
  });

  it('never infers a voltage farther than 10 %, and never null without a notice', () => {
    const volts = fc.double({ min: 0.1, max: 2000, noNaN: true });
    const hertz = fc.double({ min: 1, max: 1000, noNaN: true });
    fc.assert(
      fc.property(volts, hertz, (v, f) => {
        const { nominal, codes } = infer(v, f);
        if (nominal) expect(Math.abs(v / nominal.voltageV - 1)).toBeLessThanOrEqual(0.1 + 1e-9);
        else expect(codes).not.toEqual([]);
      }),
    );
  });
});
