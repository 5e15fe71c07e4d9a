import { A_WEEK_S, type HarmonicRow, type LimitProvenance, type LimitTable } from './limitTable.ts';

const TEN_MINUTES = 'for sustained voltage, not for moments';

/** At the 120 V that the standard prints. An inverter's outlet is a point of utilization. */
const printedOn120V = [
  { at: 'service', range: 'A', min: 114, max: 126, remark: 'where the network meets the building' },
  { at: 'service', range: 'B', min: 110, max: 127, remark: 'where the network meets the building' },
  { at: 'utilization', range: 'A', min: 108, max: 126, remark: 'at the outlet, where an inverter counts' },
  { at: 'utilization', range: 'B', min: 104, max: 127, remark: 'at the outlet, where an inverter counts' },
] as const;

/**
 * The voltage ranges of ANSI C84.1 for one nominal voltage.
 *
 * @param nominalV - 120 as printed; any other is scaled from it and counts as from memory.
 * @see ANSI C84.1-2016, Table 1, service and utilization ranges, seen on public pages. Many texts call
 * range B "±10 %": that is not in the standard, nor is a tolerance for the frequency.
 */
function ansiC84At(nominalV: number, provenance: LimitProvenance, scaled: string): LimitTable {
  return {
    standard: 'ANSI C84.1',
    edition: '2016',
    subject: `60 Hz networks, ${nominalV} V`,
    appliesTo: { voltageV: nominalV, frequencyHz: 60 },
    rows: printedOn120V.map(({ at, range, min, max, remark }) => ({
      clause: `Table 1, ${at} range ${range}`,
      quantity: 'RMS voltage',
      unit: 'V',
      limit: { min: (min * nominalV) / 120, max: (max * nominalV) / 120 },
      provenance,
      remark: `${remark}; ${TEN_MINUTES}${scaled}`,
      elsewhere: at === 'service',
    })),
  };
}

export const ansiC84: readonly LimitTable[] = [
  ansiC84At(120, 'public', ''),
  ansiC84At(240, 'memory', '; double the 120 V figures'),
  ansiC84At(100, 'memory', '; scaled from the 120 V figures, the standard has no 100 V class'),
];

export const nemaMg1: LimitTable = {
  standard: 'NEMA MG 1',
  edition: 'edition not checked',
  subject: 'generators',
  rows: [
    {
      clause: 'Parts 32 and 33',
      quantity: 'deviation factor',
      unit: '%',
      limit: { max: 10 },
      provenance: 'public',
      remark:
        'for generators with nothing connected; the US guide specification UFGS 16263A asks the same at no load and at full load',
    },
  ],
};

const REMARK =
  'asks for 95 % of the 10-minute values of a week, where a customer meets the network; 3-second values may reach 1.5 times as much';
const HIGHEST_HARMONIC_PERCENT = 5;

const ieee519Harmonics: HarmonicRow = {
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
