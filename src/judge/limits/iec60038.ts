import type { LimitTable } from './limitTable.ts';

export const iec60038: LimitTable = {
  standard: 'IEC 60038',
  edition: '2009',
  subject: 'standard voltages, 230 V',
  appliesTo: { voltageV: 230, frequencyHz: 50 },
  rows: [
    {
      clause: 'Table 1',
      quantity: 'RMS voltage',
      unit: 'V',
      limit: { min: 207, max: 253 },
      provenance: 'public',
      remark: 'where the network meets the building, under normal conditions',
    },
    {
      clause: 'Annex A',
      quantity: 'RMS voltage',
      unit: 'V',
      limit: { min: 198, max: 253 },
      provenance: 'memory',
      remark: 'at the outlet, after the drop inside the building',
    },
  ],
};
