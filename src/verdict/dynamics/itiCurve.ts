import type { DynamicCurve } from './dynamicCurve.ts';

/** What single-phase information technology equipment is expected to ride through. */
export const itiCurve: DynamicCurve = {
  standard: 'ITI curve',
  edition: '2000',
  clause: 'voltage tolerance envelope',
  name: 'voltage tolerance of computers',
  quantity: 'RMS voltage',
  about: 'nominal',
  upper: [
    { afterS: 0, percent: 400 },
    // A sixth of a millisecond, a hundredth of a cycle of 60 Hz.
    { afterS: 0.01 / 60, percent: 100 },
    { afterS: 0.001, percent: 40 },
    { afterS: 0.003, percent: 20 },
    { afterS: 0.5, percent: 10 },
  ],
  lower: [
    { afterS: 0, percent: -100 },
    { afterS: 0.02, percent: -30 },
    { afterS: 0.5, percent: -20 },
    { afterS: 10, percent: -10 },
  ],
  provenance: 'public',
  remark:
    'for 120 V 60 Hz equipment; times count from the start of the event; what happens within one cycle takes the instantaneous voltage and is not judged by RMS',
};
