import type { Figure } from '../../base/figure.ts';
import type { SampleRange } from '../../read/capture.ts';
import { median } from '../../signal/statistics.ts';
import type { BrownOut } from '../breaks/supplyEvent.ts';
import { budgeted } from '../doubt/budget.ts';
import { alikeWithin, within } from '../doubt/component.ts';
import type { HalfCycleRms, MeasuringChain } from '../envelope.ts';
import { missing } from '../reasons.ts';
import { litSpans } from './envelopeMoves.ts';
import type { ValueSpan } from './sharpEdges.ts';
import { voltageFigure } from './stepFigures.ts';

/** Of the voltage before: lower is low voltage, until it is back over it. */
const LOW_RATIO = 0.85;
/** Of the voltage before: lower is none. */
const NO_RATIO = 0.1;
/** Values that make three cycles; a low stretch of so many or more counts. */
const LEAST_VALUES = 6;
/** Values that the voltage before is told from, at most: fifty cycles, so that a fall over half a second counts. */
const BEFORE_VALUES = 100;
/** Values that it is told from at least: two cycles. */
const LEAST_BEFORE = 4;

/** A stretch of low voltage, by the indices of the envelope's values. */
export interface LowStretch extends ValueSpan {
  /** The voltage before it, and of how many values. */
  readonly before: { readonly level: number; readonly count: number };
  /** True where the voltage goes altogether, or the record ends, before it is back. */
  readonly endsLow: boolean;
  /** True where the record goes on without voltage. */
  readonly goesOut: boolean;
}

/**
 * Stretches of three cycles or more in which Urms(1/2) lies at 10 to 85 % of what it was before, in time order.
 *
 * What it was before is the middle value of up to fifty cycles that are not low, since the voltage last came.
 *
 * @param dark - stretches without voltage, in samples.
 */
export function lowStretches(
  { rms, ...where }: HalfCycleRms,
  dark: readonly SampleRange[],
): readonly LowStretch[] {
  return litSpans({ rms, ...where }, dark).flatMap((span) =>
    lowWithin(rms, span).map((low) => {
      const endsLow = low.last === span.last;
      return { ...low, endsLow, goesOut: endsLow && span.last < rms.length - 1 };
    }),
  );
}

/** The figures of stretches of low voltage. @param scatter - standard deviation of one value. */
export function brownOuts(
  low: readonly LowStretch[],
  envelope: HalfCycleRms,
  scatter: number,
  chain: MeasuringChain,
): readonly BrownOut[] {
  const { timeS, rms, frequencyHz } = envelope;
  return low.map(({ before: { level, count }, first, last, endsLow, goesOut }) => {
    const periodS = 1 / frequencyHz[first]!;
    const record = { timeS, rms, nominal: null, scatter, periodS, chain };
    const startS = crossing(envelope, first, level, -1);
    // The voltage goes altogether: the low stretch lasts until then.
    const endS = endsLow ? timeS[last]! + periodS / 2 : crossing(envelope, last + 1, level, 1);
    const time = (seconds: number, halfCycles: number) =>
      budgeted(seconds, [
        within('place of the change in its cycle', (halfCycles * periodS) / 2, 's', 1),
        alikeWithin('time base', chain.instrument.timeBasePpm, 'ppm', seconds / 1e6),
      ]);
    const lowest = rms.subarray(first, last + 1).reduce((a, b) => Math.min(a, b));
    const end: Figure = endsLow && !goesOut ? missing({ code: 'voltage.notBack' }) : time(endS, 1);
    return {
      kind: 'brown-out',
      startS: time(startS, 1),
      endS: end,
      durationS: time(endS - startS, 2),
      before: voltageFigure(level, count, record),
      lowest: voltageFigure(lowest, 1, record),
    };
  });
}

type FoundLow = ValueSpan & Pick<LowStretch, 'before'>;

function lowWithin(rms: Float64Array, { first, last }: ValueSpan): readonly FoundLow[] {
  const found: FoundLow[] = [];
  /** The values that are not low, ascending in time. */
  const usual: number[] = [];
  let highest = 0;
  let k = first;
  while (k <= last) {
    // No middle value lies over the highest: most records are told so without one.
    const isTold = usual.length >= LEAST_BEFORE && rms[k]! < LOW_RATIO * highest;
    const level = isTold ? median(usual.slice(-BEFORE_VALUES)) : null;
    const isLow = (i: number): boolean =>
      level !== null && rms[i]! < LOW_RATIO * level && rms[i]! >= NO_RATIO * level;
    if (level === null || !isLow(k)) {
      usual.push(rms[k]!);
      highest = Math.max(highest, rms[k]!);
      k++;
      continue;
    }
    const from = k;
    while (k <= last && isLow(k)) k++;
    if (k - from >= LEAST_VALUES)
      found.push({
        first: from,
        last: k - 1,
        before: { level, count: Math.min(usual.length, BEFORE_VALUES) },
      });
    else usual.push(...rms.subarray(from, k));
  }
  return found;
}

/**
 * When the voltage crosses half of the way between the level before and where it is a cycle past the border; a sharp
 * change moves Urms(1/2) along a slope with the change at its middle.
 *
 * @param at - the first value past the border.
 * @param way - −1 where it falls, 1 where it rises.
 */
function crossing({ timeS, rms }: HalfCycleRms, at: number, level: number, way: -1 | 1): number {
  const low = way < 0 ? rms[Math.min(rms.length - 1, at + 2)]! : rms[Math.max(0, at - 3)]!;
  const border = (level + low) / 2;
  let k = at;
  while (k > 0 && way * (rms[k - 1]! - border) > 0) k--;
  while (k < rms.length - 1 && way * (rms[k]! - border) < 0) k++;
  if (k === 0) return timeS[0]!;
  const share = (border - rms[k - 1]!) / (rms[k]! - rms[k - 1]!);
  return timeS[k - 1]! + Math.max(0, Math.min(1, share)) * (timeS[k]! - timeS[k - 1]!);
}
