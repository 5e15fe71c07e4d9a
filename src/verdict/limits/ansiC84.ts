import type { LimitProvenance, LimitTable } from './limitTable.ts';

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
