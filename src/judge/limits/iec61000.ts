import { type HarmonicRow, type LimitTable, TEN_MINUTES_S, THREE_SECONDS_S } from './limitTable.ts';

/**
 * Compatibility level of one harmonic in a public low-voltage network, in percent of the fundamental.
 *
 * @param order - whole, 2 to 50.
 * @see IEC 61000-2-2:2002, Table 1, seen on a public page. The two formula rows: odd orders from 17 that
 * are no multiple of 3 have 2.27 · 17/h − 0.27, even orders from 10 have 0.25 · 10/h + 0.25.
 */
export function compatibilityLevelPercent(order: number): number {
  const printed = printedPercent.get(order);
  if (printed !== undefined) return printed;
  if (order % 2 === 0) return (0.25 * 10) / order + 0.25;
  if (order % 3 === 0) return 0.2;
  return (2.27 * 17) / order - 0.27;
}

const printedPercent: ReadonlyMap<number, number> = new Map([
  [2, 2],
  [3, 5],
  [4, 1],
  [5, 6],
  [6, 0.5],
  [7, 5],
  [8, 0.5],
  [9, 1.5],
  [11, 3.5],
  [13, 3],
  [15, 0.4],
  [21, 0.3],
]);

const LONG_TERM = 'level for effects of 10 minutes or more, in a public network';

export const compatibilityLevels: HarmonicRow = {
  clause: '4.3, Table 1',
  unit: '% of fundamental',
  limitPercent: new Map(Array.from({ length: 49 }, (_, i) => [i + 2, compatibilityLevelPercent(i + 2)])),
  provenance: 'public',
  neededS: TEN_MINUTES_S,
  by: 'subgroups',
  remark: LONG_TERM,
};

export const iec61000: LimitTable = {
  standard: 'IEC 61000-2-2',
  edition: '2002+A1:2017+A2:2018',
  subject: 'public low-voltage networks',
  rows: [
    {
      clause: '4.3',
      quantity: 'THD',
      unit: '% of fundamental',
      highestOrder: 50,
      by: 'subgroups',
      limit: { max: 8 },
      provenance: 'public',
      neededS: TEN_MINUTES_S,
      remark: LONG_TERM,
    },
    {
      clause: '4.3',
      quantity: 'THD',
      unit: '% of fundamental',
      highestOrder: 50,
      by: 'subgroups',
      limit: { max: 11 },
      provenance: 'memory',
      neededS: THREE_SECONDS_S,
      remark: 'level for effects of 3 seconds or less, in a public network',
    },
  ],
  harmonics: compatibilityLevels,
};
