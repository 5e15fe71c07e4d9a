import { hypot } from '../../base/elementary.ts';
import type { Figure, MeasuredFigure } from '../../base/figure.ts';
import { budgeted } from '../doubt/budget.ts';
import { alikeWithin, type Component, scaleComponents, scatter, within } from '../doubt/component.ts';
import type { MeasuringChain } from '../envelope.ts';
import { missing } from '../reasons.ts';

/** What the figures of a step are made from. */
export interface StepRecord {
  readonly timeS: Float64Array;
  readonly rms: Float64Array;
  /** In the unit of the RMS; null: unknown. */
  readonly nominal: number | null;
  /** Of one value. */
  readonly scatter: number;
  readonly periodS: number;
  readonly chain: MeasuringChain;
}

/** A voltage of the envelope: the gain errors, and its scatter over the values that it is the mean of. */
export function voltageFigure(value: number, count: number, record: StepRecord): MeasuredFigure {
  return budgeted(value, [
    ...scale(value, record),
    scatter('noise', record.scatter / Math.sqrt(count), 'U', 1),
  ]);
}

/** A difference of two voltages in % of nominal. The gain errors grow with the difference only. */
export function percentFigure(
  difference: number,
  [countA, countB]: readonly [number, number],
  record: StepRecord,
): Figure {
  const { nominal } = record;
  if (nominal === null) return NO_NOMINAL;
  const percent = (100 * difference) / nominal;
  const once = record.scatter * hypot(1 / Math.sqrt(countA), 1 / Math.sqrt(countB));
  return budgeted(percent, [...scale(percent, record), scatter('noise', once, 'U', 100 / nominal)]);
}

/** A time of the envelope: known to half a cycle. */
export function timeFigure(
  seconds: number,
  record: StepRecord,
  components: readonly Component[] = [],
): MeasuredFigure {
  return budgeted(seconds, [
    within('place of the step in its cycle', record.periodS / 2, 's', 1),
    alikeWithin('time base', record.chain.instrument.timeBasePpm, 'ppm', seconds / 1e6),
    ...components,
  ]);
}

/**
 * From the step to the last return into ± bandPercent of nominal around the level after it.
 *
 * @param range - first and last index of the envelope that belong to this step.
 */
export function recoveryFigure(
  record: StepRecord,
  range: readonly [number, number],
  step: { readonly atS: number; readonly after: number; readonly settled: boolean },
  bandPercent: number,
): Figure {
  const { nominal, timeS, rms } = record;
  if (nominal === null) return NO_NOMINAL;
  const exit = settlingIndex(timeS, rms, range, step.after, (bandPercent / 100) * nominal);
  if (exit === 'never' || !step.settled) {
    return missing({ code: 'voltage.notSettled' });
  }
  if (exit === null) return timeFigure(0, record);
  return timeFigure(Math.max(0, exit.atS - step.atS), record, [
    scatter('noise where it comes into the band', record.scatter / exit.slope, 's'),
  ]);
}

const scale = (value: number, { chain }: StepRecord): readonly Component[] =>
  scaleComponents(value, chain.instrument, chain.scaleSource);

const NO_NOMINAL: Figure = missing({ code: 'nominal.unknown' });

/** When a quantity is outside a band for the last time. */
interface LastExit {
  /** Time at which it comes back in, on the axis of the times given. */
  readonly atS: number;
  /** How fast it comes in, per second, > 0. */
  readonly slope: number;
}

/**
 * The last return of values[from … last] into a band, on the straight line between the last value outside
 * and the one after it.
 *
 * @param timeS - shape N, ascending.
 * @param values - shape N. Not changed.
 * @returns null where none lies outside; `never` where the last one does.
 */
export function settlingIndex(
  timeS: Float64Array,
  values: Float64Array,
  [from, last]: readonly [number, number],
  centre: number,
  halfWidth: number,
): LastExit | null | 'never' {
  let outside = last;
  while (outside >= from && Math.abs(values[outside]! - centre) <= halfWidth) outside--;
  if (outside < from) return null;
  if (outside === last) return 'never';
  const border = centre + Math.sign(values[outside]! - centre) * halfWidth;
  const rise = values[outside + 1]! - values[outside]!;
  const time = timeS[outside + 1]! - timeS[outside]!;
  return {
    atS: timeS[outside]! + (time * (border - values[outside]!)) / rise,
    slope: Math.abs(rise) / time,
  };
}
