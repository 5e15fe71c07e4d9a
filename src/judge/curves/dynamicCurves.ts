import type { CurvePoint, DynamicCurve } from './dynamicCurve.ts';
import { iso8528 } from './iso8528.ts';

export interface ToldStep {
  /** True where the person said that a resistive load went between nothing and full. */
  readonly isResistiveFullStep: boolean;
  /** Nominal voltage and frequency, where known. */
  readonly nominal: { readonly voltageV: number; readonly frequencyHz: number } | null;
}

/** The curves that a step can be held against, those written for the source itself first. */
export function dynamicCurves({ isResistiveFullStep, nominal }: ToldStep): readonly DynamicCurve[] {
  // The ITI curve is for 120 V, 120/208 V and 120/240 V at 60 Hz.
  const isNorthAmerican =
    nominal !== null && nominal.frequencyHz === 60 && [120, 208, 240].includes(nominal.voltageV);
  return [
    ...(isResistiveFullStep ? [iec62109LoadStep] : []),
    ...iso8528,
    ...iec62040Dynamic,
    ...(isNorthAmerican ? [itiCurve] : []),
  ];
}

const REMARK =
  'for uninterruptible supplies; the shape between the first milliseconds and the steady ±10 % is a weak memory, for orientation only';

/** Up and down alike. */
const both = (points: readonly (readonly [afterS: number, percent: number])[]) => ({
  upper: points.map(([afterS, percent]): CurvePoint => ({ afterS, percent })),
  lower: points.map(([afterS, percent]): CurvePoint => ({ afterS, percent: -percent })),
});

const CLASSES = [
  both([
    [0, 30],
    [0.005, 14],
    [0.05, 12],
    [0.1, 11],
    [1, 10],
  ]),
  both([
    [0, 100],
    [0.001, 30],
    [0.01, 20],
    [0.1, 12],
    [1, 10],
  ]),
  {
    ...both([
      [0, 100],
      [0.01, 20],
      [1, 10],
    ]),
    upper: [
      { afterS: 0, percent: 100 },
      { afterS: 0.005, percent: 40 },
      { afterS: 0.01, percent: 20 },
      { afterS: 1, percent: 10 },
    ],
  },
] as const;

/** Output dynamic performance, classes 1 to 3. Information, never a verdict. */
export const iec62040Dynamic: readonly DynamicCurve[] = CLASSES.map((points, i) => ({
  standard: 'IEC 62040-3',
  edition: '2021',
  clause: '5.3.4.4',
  name: `output dynamic performance, curve ${i + 1}`,
  quantity: 'RMS voltage',
  about: 'nominal',
  ...points,
  provenance: 'memory',
  remark: REMARK,
}));

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
