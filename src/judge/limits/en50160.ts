import { A_WEEK_S, type LimitTable, TEN_MINUTES_S, TEN_SECONDS_S } from './limitTable.ts';

const WEEK = 'asks for 95 % of the 10-minute means of a week, at a public network';

const evenPercent: readonly [number, number][] = Array.from({ length: 12 }, (_, i) => {
  const order = 2 * (i + 1);
  return [order, order === 2 ? 2 : order === 4 ? 1 : 0.5];
});

/**
 * The rows for a system tied to a larger grid (50 Hz ±1 %) are left out: a stand-alone source is not, and the
 * standard has rows of its own for such systems.
 */
export const en50160: LimitTable = {
  standard: 'EN 50160',
  edition: '2010',
  subject: 'public networks in Europe',
  appliesTo: { voltageV: 230, frequencyHz: 50 },
  rows: [
    {
      clause: '4.2.2',
      quantity: 'RMS voltage',
      unit: 'V',
      limit: { min: 207, max: 253 },
      provenance: 'public',
      neededS: A_WEEK_S,
      remark: WEEK,
    },
    {
      clause: '4.2.2',
      quantity: 'RMS voltage',
      unit: 'V',
      limit: { min: 195.5, max: 253 },
      provenance: 'public',
      neededS: TEN_MINUTES_S,
      remark: 'asks for all 10-minute means, at a public network',
    },
    {
      clause: '4.2.1',
      quantity: 'frequency',
      unit: 'Hz',
      limit: { min: 49, max: 51 },
      provenance: 'public',
      neededS: A_WEEK_S,
      remark: 'for networks not tied to the grid; asks for 95 % of the 10-second means of a week',
    },
    {
      clause: '4.2.1',
      quantity: 'frequency',
      unit: 'Hz',
      limit: { min: 42.5, max: 57.5 },
      provenance: 'public',
      neededS: TEN_SECONDS_S,
      remark: 'for networks not tied to the grid; asks for all 10-second means',
    },
    {
      clause: '4.2.5',
      quantity: 'THD',
      unit: '% of fundamental',
      highestOrder: 40,
      by: 'subgroups',
      limit: { max: 8 },
      provenance: 'public',
      neededS: A_WEEK_S,
      remark: WEEK,
    },
  ],
  harmonics: {
    clause: '4.2.5, Table 1',
    unit: '% of fundamental',
    limitPercent: new Map([
      ...evenPercent,
      [3, 5],
      [5, 6],
      [7, 5],
      [9, 1.5],
      [11, 3.5],
      [13, 3],
      [15, 0.5],
      [17, 2],
      [19, 1.5],
      [21, 0.5],
      [23, 1.5],
      [25, 1.5],
    ]),
    provenance: 'public',
    neededS: A_WEEK_S,
    by: 'subgroups',
    remark: `${WEEK}; later editions may allow more at orders 15 and 21`,
  },
};
