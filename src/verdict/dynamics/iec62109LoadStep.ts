import type { DynamicCurve } from './dynamicCurve.ts';

/** Only for a resistive step between no load and full load, which the person must tell: the wave can't. */
export const iec62109LoadStep: DynamicCurve = {
  standard: 'IEC 62109-2',
  edition: '2011',
  clause: '4.7.4.4',
  name: 'load step of a stand-alone inverter',
  quantity: 'RMS voltage',
  about: 'nominal',
  upper: [
    { afterS: 0, percent: null },
    { afterS: 1.5, percent: 10 },
  ],
  lower: [
    { afterS: 0, percent: null },
    { afterS: 1.5, percent: -15 },
  ],
  provenance: 'memory',
  remark:
    'for a resistive load switched between nothing and full, at nominal DC input; outside the band for at most 1.5 s',
};
