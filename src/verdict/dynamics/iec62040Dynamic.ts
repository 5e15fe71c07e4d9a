import type { CurvePoint, DynamicCurve } from './dynamicCurve.ts';

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
