import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findings } from '../../../src/judge/limits/findings.ts';
import type { Nominal } from '../../../src/judge/nominal/mainsNominals.ts';
import { exactly, figuresWith, threeLevelHarmonics, waveformOf } from '../../assay/figuresWith.ts';

const at120: Nominal = { voltageV: 120, frequencyHz: 60, inferred: false };
const at230: Nominal = { voltageV: 230, frequencyHz: 50, inferred: false };
const sine = waveformOf('pure sine');

function of230(changes = {}, harmonics?: ReadonlyMap<number, number>) {
  return figuresWith({ frequencyHz: exactly(50), ...changes }, 230, harmonics);
}

/** As long as the statistics of the supply standards. */
const aWeek: readonly [number, number] = [0, 7 * 24 * 3600];

describe('findings', () => {
  it('puts 112 V inside utilization range A and outside service range A of ANSI C84.1', () => {
    const found = findings(figuresWith({}, 112), sine, at120, 'guarded').filter(
      ({ standard }) => standard === 'ANSI C84.1',
    );
    expect(found.map(({ clause, side, margin }) => [clause, side, margin])).toEqual([
      ['Table 1, service range A', 'outside', -2],
      ['Table 1, service range B', 'inside', 2],
      ['Table 1, utilization range A', 'inside', 4],
      ['Table 1, utilization range B', 'inside', 8],
    ]);
  });

  it('judges by the guard band and keeps the side whatever the doubt', () => {
    const doubtful = figuresWith({ rms: exactly(112, 3) }, 112);
    const found = findings(doubtful, sine, at120, 'guarded').filter(
      ({ standard }) => standard === 'ANSI C84.1',
    );
    expect(found.map(({ outcome, side }) => [outcome, side])).toEqual([
      ['conditional fail', 'outside'],
      ['conditional pass', 'inside'],
      ['pass', 'inside'],
      ['pass', 'inside'],
    ]);
    const simple = findings(doubtful, sine, at120, 'simple').filter(
      ({ standard }) => standard === 'ANSI C84.1',
    );
    expect(simple.map(({ outcome }) => outcome)).toEqual(['fail', 'pass', 'pass', 'pass']);
  });

  it('starts with the stand-alone source and keeps to the standards of the outlet', () => {
    const standards = (nominal: Nominal | null) => [
      ...new Set(findings(figuresWith(), sine, nominal, 'guarded').map(({ standard }) => standard)),
    ];
    expect(standards(at120)).toEqual([
      'IEC 62109-2',
      'IEC 62040-3',
      'NEMA MG 1',
      'ANSI C84.1',
      'IEC 61000-2-2',
      'IEEE 519',
    ]);
    expect(standards(at230)).toEqual([
      'IEC 62109-2',
      'IEC 62040-3',
      'NEMA MG 1',
      'EN 50160',
      'IEC 60038',
      'IEC 61000-2-2',
    ]);
    // Ratios to the fundamental need no nominal; volts and hertz do.
    expect(standards(null)).toEqual(['IEC 62109-2', 'IEC 62040-3', 'NEMA MG 1', 'IEC 61000-2-2']);
    expect(
      findings(figuresWith(), sine, null, 'guarded').some(({ quantity }) => /\((V|Hz)\)/.test(quantity)),
    ).toBe(false);
  });

  it.each([
    [220, 50, 'EN 50160'],
    [240, 50, 'EN 50160'],
    [110, 60, 'ANSI C84.1'],
    [127, 60, 'ANSI C84.1'],
  ])('counts an outlet told as %s V %s Hz into the class of %s', (voltageV, frequencyHz, standard) => {
    const found = findings(
      figuresWith({}, voltageV),
      sine,
      { voltageV, frequencyHz, inferred: false },
      'simple',
    );
    expect(found.map((finding) => finding.standard)).toContain(standard);
  });

  it('gives information where a value is from memory, or the statistics of the standard take longer', () => {
    const moment = findings(figuresWith({}, 70), sine, at120, 'guarded');
    const judged = moment.filter(({ outcome }) => outcome !== 'information');
    expect([...new Set(judged.map(({ standard }) => standard))]).toEqual([
      'IEC 62040-3',
      'NEMA MG 1',
      'ANSI C84.1',
    ]);
    const found = findings(figuresWith({ spanS: aWeek }, 70), sine, at120, 'guarded');
    for (const { provenance, outcome } of found)
      expect(outcome === 'information').toBe(provenance === 'memory');
    const lowest = found.find(({ clause }) => clause === '4.7.4.2');
    // 90 % of 120 V is 108 V.
    expect(lowest).toMatchObject({ limit: { min: 108, max: 132 }, margin: -38, side: 'outside' });
  });

  it('counts THD as far as each standard does: a square wave has 47.03 % to order 40, 47.30 % to 50', () => {
    const square = of230({}, threeLevelHarmonics(0));
    const found = findings(square, waveformOf('square'), at230, 'guarded');
    const thd = (standard: string) =>
      found.find((finding) => finding.standard === standard && finding.quantity.startsWith('THD'));
    // Closed form, sums of 1/n² over odd n: 47.032239 and 47.297133 %.
    expect(thd('EN 50160')?.quantity).toBe('THD to order 40 (% of fundamental)');
    expect(Math.abs((thd('EN 50160')?.value ?? 0) - 47.032239)).toBeLessThan(5e-7); // digits printed
    expect(Math.abs((thd('IEC 61000-2-2')?.value ?? 0) - 47.297133)).toBeLessThan(5e-7);
  });

  it('counts IEEE 519 in percent of the nominal voltage', () => {
    const low = figuresWith({ spanS: aWeek, fundamental: exactly(108, 3) }, 108, new Map([[3, 6]]));
    const found = findings(low, waveformOf('distorted sine'), at120, 'guarded').filter(
      ({ standard }) => standard === 'IEEE 519',
    );
    // 6 % of 108 V is 5.4 % of 120 V; its doubt is 6 · 3 / 120 = 0.15, less than the 0.4 beyond the limit.
    expect(found.map(({ quantity }) => quantity)).toEqual([
      'THD to order 50 (% of nominal)',
      'harmonic 3 (% of nominal)',
    ]);
    expect(Math.abs((found[1]?.value ?? 0) - 5.4)).toBeLessThan(1e-12); // one multiplication and division
    expect(found[1]?.outcome).toBe('fail');
  });

  it('says of harmonics the worst and every other one outside, not fifty passes', () => {
    const harmonics = new Map([
      [3, 4], // 80 % of its 5 %
      [15, 0.6], // 120 % of its 0.5 %
      [21, 0.75], // 150 % of its 0.5 %
      [30, 5], // no limit in EN 50160
    ]);
    const found = findings(of230({}, harmonics), sine, at230, 'guarded')
      .filter(({ standard, quantity }) => standard === 'EN 50160' && quantity.startsWith('harmonic'))
      .map(({ quantity, side }) => `${quantity} ${side}`);
    expect(found).toEqual([
      'harmonic 21 (% of fundamental) outside',
      'harmonic 15 (% of fundamental) outside',
    ]);
    const clean = findings(of230({}, new Map([[3, 4]])), sine, at230, 'guarded').filter(
      ({ standard, quantity }) => standard === 'EN 50160' && quantity.startsWith('harmonic'),
    );
    expect(clean).toMatchObject([{ quantity: 'harmonic 3 (% of fundamental)', side: 'inside', margin: 1 }]);
  });

  it('lends a harmonic without a doubt of its own that of the THD', () => {
    const figures = of230({ spanS: aWeek, thdPercent: exactly(4.8, 0.4) }, new Map([[3, 4.8]]));
    const third = findings(figures, sine, at230, 'guarded').find(
      ({ standard, quantity }) => standard === 'EN 50160' && quantity.startsWith('harmonic 3'),
    );
    expect(third?.outcome).toBe('conditional pass'); // 0.2 inside, 0.4 of doubt
  });

  it('holds a wave to the rows of its own kind in IEC 62109-2', () => {
    // Peak of a three-level wave at 50 % duty: √2 · 120 V; 155.54 % of 120 V is 186.648 V.
    const figures = figuresWith(
      { edgeSlope: exactly(12), peak: exactly(169.7), trough: exactly(-170.2) },
      108,
      threeLevelHarmonics(45),
    );
    const quantities = (kind: 'modified sine' | 'stepped' | 'distorted sine' | 'not classified') =>
      findings(figures, waveformOf(kind), at120, 'guarded')
        .filter(({ clause, standard }) => standard === 'IEC 62109-2' && clause.startsWith('4.7.5'))
        .map(({ clause, quantity, side }) => `${clause} ${quantity} ${side}`);
    const other = [
      '4.7.5.3 THD to order 50 (% of fundamental) outside', // 47.3 to 40 %
      '4.7.5.3 edge slope (V/µs) outside', // 12 to 10 V/µs
      '4.7.5.3 peak voltage (V) inside',
    ];
    expect(quantities('modified sine')).toEqual(other);
    expect(quantities('stepped')).toEqual(other);
    expect(quantities('distorted sine')[0]).toBe('4.7.5.2 THD to order 50 (% of fundamental) outside');
    expect(quantities('not classified')).toEqual([]);
  });

  it.each([
    // THD over all orders is at most 40 % for conduction 0.57 to 0.92 of a half-cycle (computed).
    [0.55, 'outside'],
    [0.6, 'inside'],
    [0.9, 'inside'],
    [0.95, 'outside'],
  ])('puts a three-level wave that conducts %s of the time %s the 40 %% row', (conduction, side) => {
    const figures = figuresWith({}, 108, threeLevelHarmonics(90 * (1 - conduction)));
    const row = findings(figures, waveformOf('modified sine'), at120, 'guarded').find(
      ({ quantity, limit }) => quantity.startsWith('THD') && limit.max === 40,
    );
    expect(row?.side).toBe(side);
  });

  it('speaks of the S limits with this load, never of a letter earned', () => {
    const remark = (percent: number) =>
      findings(figuresWith({}, 120, new Map([[5, percent]])), sine, at120, 'guarded').find(
        ({ standard }) => standard === 'IEC 62040-3',
      )?.remark;
    expect(remark(2)).toMatch(/^within the S limits with this load; /);
    expect(remark(9)).toMatch(/^outside the S limits with this load; /);
    // 6.5 % of fifth harmonic: the THD row is inside its 8 %, the harmonic outside its 6 %.
    expect(remark(6.5)).toMatch(/^outside the S limits with this load; /);
  });

  it.each([
    [42.4, false],
    [42.6, true],
    [68.9, true],
    [69.1, false],
    [400, false],
    [9.6, false],
  ])('has limits at %s Hz: %s', (hertz, has) => {
    const found = findings(figuresWith({ frequencyHz: exactly(hertz) }), sine, null, 'guarded');
    expect(found.length > 0).toBe(has);
  });

  it('marks what is for another place than an outlet', () => {
    const marked = findings(figuresWith(), sine, at120, 'guarded').filter(({ elsewhere }) => elsewhere);
    expect(marked.map(({ clause }) => clause)).toEqual([
      'Table 1, service range A',
      'Table 1, service range B',
    ]);
  });

  it('gives information where another outlet that is possible would turn a finding', () => {
    // 107 V lies under the 108 V of 120 V, and inside the same share of 110 V: 99 V.
    const at110 = [{ voltageV: 110, frequencyHz: 60 }];
    const of = (others: typeof at110) =>
      findings(figuresWith({}, 107), sine, at120, 'guarded', null, { others }).filter(
        ({ quantity }) => !quantity.startsWith('harmonic'),
      );
    const rangeA = (others: typeof at110) =>
      of(others).find(({ clause }) => clause === 'Table 1, utilization range A');
    expect(rangeA([])).toMatchObject({ outcome: 'fail', side: 'outside', limit: { min: 108 } });
    expect(rangeA(at110)).toMatchObject({ outcome: 'information', side: 'outside', limit: { min: 108 } });
    expect(rangeA(at110)?.remark).toContain('the other way round if the outlet is meant for 110 V 60 Hz');
    // What doesn't turn judges as before: 104 V of range B holds either way, THD knows no volts.
    const same = (finding: { readonly clause: string; readonly quantity: string }) =>
      finding.clause === 'Table 1, utilization range B' || finding.quantity.startsWith('THD');
    expect(of(at110).filter(same)).toEqual(of([]).filter(same));
  });

  it('leaves out what could not be measured', () => {
    const missing = { value: null, reason: 'no period' };
    const noPeriod = figuresWith({
      frequencyHz: missing,
      thdPercent: missing,
      fundamental: missing,
      deviationFactorPercent: missing,
      harmonics: [],
    });
    const found = findings(noPeriod, waveformOf('not classified'), at120, 'guarded');
    expect(found.every(({ quantity }) => quantity === 'RMS voltage (V)')).toBe(true);
  });

  it('never says that anything complies', () => {
    for (const nominal of [at120, at230])
      for (const { remark } of findings(figuresWith(), sine, nominal, 'guarded'))
        expect(remark).not.toMatch(/compl(y|ies)|conform/i);
  });

  it('keeps side, margin and outcome of one mind', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 150, max: 280, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 15, noNaN: true }),
        (rms, uncertainty, third) => {
          const figures = of230({ rms: exactly(rms, uncertainty) }, new Map([[3, third]]));
          for (const { side, margin, outcome, value, limit } of findings(figures, sine, at230, 'guarded')) {
            const inside = value <= (limit.max ?? Infinity) && value >= (limit.min ?? -Infinity);
            expect(side).toBe(inside ? 'inside' : 'outside');
            expect(margin >= 0).toBe(inside);
            if (outcome !== 'information') expect(outcome.endsWith('pass')).toBe(inside);
          }
        },
      ),
    );
  });
});
