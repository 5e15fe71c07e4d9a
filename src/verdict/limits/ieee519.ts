import { A_WEEK_S } from './durations.ts';
import type { HarmonicRow, LimitTable } from './limitTable.ts';

const REMARK =
  'asks for 95 % of the 10-minute values of a week, where a customer meets the network; 3-second values may reach 1.5 times as much';
const HIGHEST_HARMONIC_PERCENT = 5;

export const ieee519Harmonics: HarmonicRow = {
  clause: 'Table 1',
  unit: '% of nominal',
  limitPercent: new Map(Array.from({ length: 49 }, (_, i) => [i + 2, HIGHEST_HARMONIC_PERCENT])),
  provenance: 'public',
  neededS: A_WEEK_S,
  by: 'subgroups',
  remark: REMARK,
};

/** Counted in percent of the nominal voltage; voltages up to 1 kV, where the 1992 edition's 5 % and 3 % no longer hold. */
export const ieee519: LimitTable = {
  standard: 'IEEE 519',
  edition: '2022',
  subject: 'networks up to 1 kV in North America',
  appliesTo: { frequencyHz: 60 },
  rows: [
    {
      clause: 'Table 1',
      quantity: 'THD',
      unit: '% of nominal',
      highestOrder: 50,
      limit: { max: 8 },
      provenance: 'public',
      neededS: A_WEEK_S,
      by: 'subgroups',
      remark: REMARK,
    },
  ],
  harmonics: ieee519Harmonics,
};
