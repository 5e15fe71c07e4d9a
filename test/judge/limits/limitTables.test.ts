import { describe, expect, it } from 'vitest';
import { compatibilityLevelPercent } from '../../../src/judge/limits/iec61000.ts';
import type { LimitTable } from '../../../src/judge/limits/limitTable.ts';
import { limitTables } from '../../../src/judge/limits/limitTables.ts';

function table(standard: string, voltageV?: number): LimitTable {
  const found = limitTables().find(
    (each) => each.standard === standard && (voltageV === undefined || each.appliesTo?.voltageV === voltageV),
  );
  if (!found) throw new Error(`no table ${standard}`);
  return found;
}

function limitsOf(each: LimitTable, quantity: string) {
  return each.rows.filter((row) => row.quantity === quantity).map(({ limit }) => limit);
}

describe('limitTables', () => {
  it('puts the standards of the source itself before those of networks', () => {
    const order = [...new Set(limitTables().map(({ standard }) => standard))];
    expect(order).toEqual([
      'IEC 62109-2',
      'IEC 62040-3',
      'NEMA MG 1',
      'ANSI C84.1',
      'EN 50160',
      'IEC 60038',
      'IEC 61000-2-2',
      'IEEE 519',
    ]);
  });

  it('names edition, clause, provenance and remark in every row', () => {
    for (const { edition, subject, rows, harmonics } of limitTables()) {
      expect(edition).not.toBe('');
      expect(subject).not.toBe('');
      for (const row of [...rows, ...(harmonics ? [harmonics] : [])]) {
        expect(row.clause).not.toBe('');
        expect(row.remark).not.toBe('');
        expect(['public', 'memory']).toContain(row.provenance);
      }
    }
  });

  it('holds IEC 62109-2 (from memory, and said to be)', () => {
    const { rows, harmonics } = table('IEC 62109-2');
    expect(rows.every(({ provenance }) => provenance === 'memory')).toBe(true);
    expect(limitsOf(table('IEC 62109-2'), 'RMS voltage')).toEqual([
      { min: 90, max: 110 },
      { min: 85, max: 110 },
    ]);
    expect(limitsOf(table('IEC 62109-2'), 'frequency')).toEqual([{ min: 94, max: 104 }]);
    expect(limitsOf(table('IEC 62109-2'), 'THD')).toEqual([{ max: 10 }, { max: 40 }]);
    expect(harmonics?.limitPercent.get(3)).toBe(6);
  });

  it('holds the service and utilization ranges of ANSI C84.1-2016, Table 1, and doubles them at 240 V', () => {
    expect(limitsOf(table('ANSI C84.1', 120), 'RMS voltage')).toEqual([
      { min: 114, max: 126 },
      { min: 110, max: 127 },
      { min: 108, max: 126 },
      { min: 104, max: 127 },
    ]);
    expect(limitsOf(table('ANSI C84.1', 240), 'RMS voltage')).toContainEqual({ min: 208, max: 254 });
    expect(limitsOf(table('ANSI C84.1', 100), 'RMS voltage')).toContainEqual({ min: 95, max: 105 });
    expect(table('ANSI C84.1', 240).rows[0]?.provenance).toBe('memory');
  });

  it('holds EN 50160:2010, 4.2: 230 V ±10 %, +10/−15 %, 50 Hz ±2 % and ±15 % when islanded, THD 8 %', () => {
    const en = table('EN 50160');
    expect(limitsOf(en, 'RMS voltage')).toEqual([
      { min: 230 * 0.9, max: 253 },
      { min: 230 * 0.85, max: 253 },
    ]);
    expect(limitsOf(en, 'frequency')).toEqual([
      { min: 49, max: 51 },
      { min: 42.5, max: 57.5 },
    ]);
    expect(limitsOf(en, 'THD')).toEqual([{ max: 8 }]);
    expect([...(en.harmonics?.limitPercent ?? [])].sort(([a], [b]) => a - b)).toEqual([
      // EN 50160:2010, Table 1.
      [2, 2],
      [3, 5],
      [4, 1],
      [5, 6],
      [6, 0.5],
      [7, 5],
      [8, 0.5],
      [9, 1.5],
      [10, 0.5],
      [11, 3.5],
      [12, 0.5],
      [13, 3],
      [14, 0.5],
      [15, 0.5],
      [16, 0.5],
      [17, 2],
      [18, 0.5],
      [19, 1.5],
      [20, 0.5],
      [21, 0.5],
      [22, 0.5],
      [23, 1.5],
      [24, 0.5],
      [25, 1.5],
    ]);
  });

  it.each([
    // IEC 61000-2-2:2002, Table 1: printed rows …
    [2, 2],
    [3, 5],
    [5, 6],
    [7, 5],
    [8, 0.5],
    [9, 1.5],
    [11, 3.5],
    [13, 3],
    [15, 0.4],
    [21, 0.3],
    [27, 0.2],
    [45, 0.2],
    // … and its two formulas, worked out to two places.
    [17, 2.0],
    [19, 1.76],
    [23, 1.41],
    [25, 1.27],
    [29, 1.06],
    [31, 0.97],
    [35, 0.83],
    [37, 0.77],
    [41, 0.67],
    [43, 0.63],
    [47, 0.55],
    [49, 0.52],
    [10, 0.5],
    [20, 0.38],
    [30, 0.33],
    [40, 0.31],
    [50, 0.3],
  ])('gives order %s of IEC 61000-2-2, Table 1, its %s %%', (order, expected) => {
    // Half a unit of the second place, and the binary rounding of one that falls on it (0.375).
    expect(Math.abs(compatibilityLevelPercent(order) - expected)).toBeLessThanOrEqual(0.005 + 1e-12);
  });

  it('holds IEEE 519-2022, Table 1: 5 % each and 8 % in all, of nominal, up to 1 kV', () => {
    const { rows, harmonics } = table('IEEE 519');
    expect(rows).toMatchObject([{ limit: { max: 8 }, unit: '% of nominal', highestOrder: 50 }]);
    expect(harmonics?.unit).toBe('% of nominal');
    expect([...(harmonics?.limitPercent ?? [])]).toHaveLength(49);
    expect(new Set(harmonics?.limitPercent.values())).toEqual(new Set([5]));
  });

  it('holds IEC 60038 at 230 V, the S limits of IEC 62040-3 and the deviation factor', () => {
    expect(limitsOf(table('IEC 60038'), 'RMS voltage')).toEqual([
      { min: 207, max: 253 },
      { min: 198, max: 253 },
    ]);
    expect(limitsOf(table('IEC 62040-3'), 'THD')).toEqual([{ max: 8 }]);
    expect(table('IEC 62040-3').harmonics?.limitPercent.get(5)).toBe(6);
    expect(limitsOf(table('NEMA MG 1'), 'deviation factor')).toEqual([{ max: 10 }]);
  });
});
