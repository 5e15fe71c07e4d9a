import { describe, expect, it } from 'vitest';
import { harmonicLimits } from '../../../src/draw/panels/harmonicLimits.ts';
import type { HarmonicRow, LimitTable } from '../../../src/judge/limits/limitTable.ts';
import { limitTables } from '../../../src/judge/limits/limitTables.ts';

const nominal = { voltageV: 230, frequencyHz: 50, inferred: true };

const table = (standard: string, orders: number[], changes: Partial<HarmonicRow> = {}): LimitTable => ({
  standard,
  edition: '1',
  subject: 'tests',
  rows: [],
  harmonics: {
    clause: '',
    provenance: 'public',
    remark: '',
    unit: '% of fundamental',
    limitPercent: new Map(orders.map((order) => [order, 5])),
    ...changes,
  },
});

describe('harmonicLimits', () => {
  it('takes the public table with most orders, even where one from memory has more', () => {
    const tables = [
      table('memory', [2, 3, 4], { provenance: 'memory' }),
      table('long', [2, 3]),
      table('short', [3]),
    ];
    expect(harmonicLimits(tables, nominal)).toEqual({
      source: 'long:1',
      provenance: 'public',
      limitPercent: new Map([
        [2, 5],
        [3, 5],
      ]),
    });
    expect(harmonicLimits(tables.slice(0, 1), nominal)?.source).toBe('memory:1');
  });

  it('takes the last of several', () => {
    expect(harmonicLimits([table('first', [2]), table('last', [3])], nominal)?.source).toBe('last:1');
  });

  it('leaves out what is for another outlet, or in percent of something else', () => {
    const other = { ...table('other', [2]), appliesTo: { voltageV: 120, frequencyHz: 60 } };
    expect(harmonicLimits([other, table('nominal', [2], { unit: '% of nominal' })], nominal)).toBeNull();
  });

  it('finds a public set among the tables that ship, for any outlet', () => {
    for (const outlet of [nominal, { ...nominal, voltageV: 120, frequencyHz: 60 }, null]) {
      const limits = harmonicLimits(limitTables(), outlet);
      expect(limits?.provenance).toBe('public');
      // IEC 61000-2-2:2002, Table 1: 6 % for the fifth, 0.4 % for the fifteenth.
      expect(limits?.limitPercent.get(5)).toBe(6);
      expect(limits?.limitPercent.get(15)).toBe(0.4);
    }
  });
});
