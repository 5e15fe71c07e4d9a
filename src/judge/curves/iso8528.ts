import type { LimitProvenance } from '../limits/limitTable.ts';
import type { DynamicCurve } from './dynamicCurve.ts';

interface PerformanceClass {
  readonly name: 'G1' | 'G2' | 'G3';
  readonly voltageOffPercent: number;
  readonly voltageOnPercent: number;
  readonly voltageRecoveryS: number;
  readonly voltageSteadyPercent: number;
  readonly frequencyOffPercent: number;
  readonly frequencyOnPercent: number;
  readonly frequencyRecoveryS: number;
  readonly frequencyBandPercent: number;
  readonly provenance: LimitProvenance;
}

/** The table of class limits. G2 seen on public pages, the others from memory. */
const CLASSES: readonly PerformanceClass[] = [
  {
    ...{
      name: 'G1',
      voltageOffPercent: 35,
      voltageOnPercent: -25,
      voltageRecoveryS: 10,
      voltageSteadyPercent: 5,
    },
    ...{
      frequencyOffPercent: 18,
      frequencyOnPercent: -15,
      frequencyRecoveryS: 10,
      frequencyBandPercent: 3.5,
    },
    provenance: 'memory',
  },
  {
    ...{
      name: 'G2',
      voltageOffPercent: 25,
      voltageOnPercent: -20,
      voltageRecoveryS: 6,
      voltageSteadyPercent: 2.5,
    },
    ...{ frequencyOffPercent: 12, frequencyOnPercent: -10, frequencyRecoveryS: 5, frequencyBandPercent: 2 },
    provenance: 'public',
  },
  {
    ...{
      name: 'G3',
      voltageOffPercent: 20,
      voltageOnPercent: -15,
      voltageRecoveryS: 4,
      voltageSteadyPercent: 1,
    },
    ...{ frequencyOffPercent: 10, frequencyOnPercent: -7, frequencyRecoveryS: 3, frequencyBandPercent: 2 },
    provenance: 'memory',
  },
];

const REMARK = 'for engine-driven generating sets, by steps of their rated load';

/** Voltage, frequency on its way and frequency's return, for each performance class. */
export const iso8528: readonly DynamicCurve[] = CLASSES.flatMap((limits) => {
  const common = { standard: 'ISO 8528-5', edition: '2018', clause: 'operating limit values' };
  const { provenance, voltageRecoveryS, voltageSteadyPercent, frequencyRecoveryS, frequencyBandPercent } =
    limits;
  return [
    {
      ...common,
      name: `performance class ${limits.name}, voltage`,
      quantity: 'RMS voltage',
      about: 'nominal',
      upper: [
        { afterS: 0, percent: limits.voltageOffPercent },
        { afterS: voltageRecoveryS, percent: voltageSteadyPercent },
      ],
      lower: [
        { afterS: 0, percent: limits.voltageOnPercent },
        { afterS: voltageRecoveryS, percent: -voltageSteadyPercent },
      ],
      provenance,
      remark:
        limits.name === 'G1' ? `${REMARK}; sets up to 10 kW may stay within ±10 % instead of ±5 %` : REMARK,
    },
    {
      ...common,
      name: `performance class ${limits.name}, frequency`,
      quantity: 'frequency',
      about: 'before',
      upper: [{ afterS: 0, percent: limits.frequencyOffPercent }],
      lower: [{ afterS: 0, percent: limits.frequencyOnPercent }],
      provenance,
      remark: REMARK,
    },
    {
      ...common,
      name: `performance class ${limits.name}, return of the frequency`,
      quantity: 'frequency',
      about: 'after',
      upper: [
        { afterS: 0, percent: null },
        { afterS: frequencyRecoveryS, percent: frequencyBandPercent },
      ],
      lower: [
        { afterS: 0, percent: null },
        { afterS: frequencyRecoveryS, percent: -frequencyBandPercent },
      ],
      provenance: 'memory',
      remark: `${REMARK}; the band around the new frequency is from memory for every class`,
    },
  ];
});
