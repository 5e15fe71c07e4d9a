import type { LimitTable } from './limitTable.ts';

const SINE_REMARK =
  'for inverters that are meant to give a sine; the order it counts to is not known, 50 is used';
const OTHER_REMARK = 'for inverters that are not meant to give a sine';
const HIGHEST_HARMONIC_PERCENT = 6;

/** Written for the source itself, so it comes first; every value from memory. */
export const iec62109: LimitTable = {
  standard: 'IEC 62109-2',
  edition: '2011',
  subject: 'stand-alone inverters',
  rows: [
    {
      clause: '4.7.4.2',
      quantity: 'RMS voltage',
      unit: '% of nominal RMS',
      limit: { min: 90, max: 110 },
      provenance: 'memory',
      remark: 'steady load, DC input at its nominal voltage',
    },
    {
      clause: '4.7.4.3',
      quantity: 'RMS voltage',
      unit: '% of nominal RMS',
      limit: { min: 85, max: 110 },
      provenance: 'memory',
      remark: 'steady load, anywhere in the DC input range',
    },
    {
      clause: '4.7.4.5',
      quantity: 'frequency',
      unit: '% of nominal',
      limit: { min: 94, max: 104 },
      provenance: 'memory',
      remark: 'steady load',
    },
    {
      clause: '4.7.5.2',
      quantity: 'THD',
      unit: '% of fundamental',
      highestOrder: 50,
      limit: { max: 10 },
      wave: 'sinusoidal',
      provenance: 'memory',
      remark: SINE_REMARK,
    },
    {
      clause: '4.7.5.3',
      quantity: 'THD',
      unit: '% of fundamental',
      highestOrder: 50,
      limit: { max: 40 },
      wave: 'non-sinusoidal',
      provenance: 'memory',
      remark: OTHER_REMARK,
    },
    {
      clause: '4.7.5.3',
      quantity: 'edge slope',
      unit: 'V/µs',
      limit: { max: 10 },
      wave: 'non-sinusoidal',
      provenance: 'memory',
      remark: `${OTHER_REMARK}; between 10 % and 90 % of the edge`,
    },
    {
      clause: '4.7.5.3',
      quantity: 'peak voltage',
      unit: '% of nominal RMS',
      limit: { max: 155.54 },
      wave: 'non-sinusoidal',
      provenance: 'memory',
      remark: `${OTHER_REMARK}; 1.414 times 110 % of the rated RMS voltage`,
    },
  ],
  harmonics: {
    clause: '4.7.5.2',
    unit: '% of fundamental',
    limitPercent: new Map(Array.from({ length: 49 }, (_, i) => [i + 2, HIGHEST_HARMONIC_PERCENT])),
    wave: 'sinusoidal',
    provenance: 'memory',
    remark: SINE_REMARK,
  },
};
