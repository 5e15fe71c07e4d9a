import type { Figure, MeasuredFigure } from '../../base/figure.ts';
import type { BenchPoint, BenchUnit } from '../../bench/benchDocument.ts';
import { sweepEnds } from '../../bench/sweep/sweepEnds.ts';

export type SweepEnd = 'noLoad' | 'fullLoad';

/** The capture at one end of a unit's sweep; null where there is none. */
export function endPoint({ points }: BenchUnit, end: SweepEnd): BenchPoint | null {
  const ends = sweepEnds(points);
  return 'reason' in ends ? null : ends[end].point;
}

/** THD at one end of a unit's sweep. */
export function thdAt(unit: BenchUnit, end: SweepEnd): Figure {
  const ends = sweepEnds(unit.points);
  return 'reason' in ends ? { value: null, reason: ends.reason } : ends[end].point.thdPercent;
}

/** RMS voltage at one end, as its deviation from nominal in %; null where either is not known. */
export function deviationAt(unit: BenchUnit, end: SweepEnd): MeasuredFigure | null {
  const nominalV = unit.nominal?.voltageV;
  const rmsV = endPoint(unit, end)?.rmsV;
  if (nominalV === undefined || rmsV === undefined || rmsV.value === null) return null;
  return {
    value: 100 * (rmsV.value / nominalV - 1),
    uncertainty: (100 * rmsV.uncertainty) / nominalV,
  };
}
