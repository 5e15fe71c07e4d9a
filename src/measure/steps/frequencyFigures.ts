import type { Figure } from '../../base/figure.ts';
import { budgeted } from '../doubt/budget.ts';
import { alikeWithin, scatter } from '../doubt/component.ts';
import type { HalfCycleRms } from '../envelope.ts';
import { missing } from '../reasons.ts';
import { type Move, settledStretch } from './envelopeMoves.ts';
import type { LoadStep } from './loadStep.ts';
import type { StepRecord } from './stepFigures.ts';

/** Of the frequency: cycles within it are settled. */
const SETTLED_RATIO = 0.001;

type FrequencyFigures = Pick<LoadStep, 'beforeHz' | 'afterHz' | 'extremeHz'>;

/**
 * Frequency before and after a step, and of the cycle after it that is farthest from before.
 *
 * @param atS - of the step. Cycles that straddle it are left out: they belong to neither side.
 */
export function frequencyFigures(
  { timeS, frequencyHz, seen }: HalfCycleRms,
  move: Move,
  atS: number,
  { periodS, chain }: StepRecord,
): FrequencyFigures {
  const settled = (first: number, last: number): Float64Array => {
    const stretch = frequencyHz.slice(first, last + 1).filter((_, i) => seen[first + i] === 1);
    if (stretch.length === 0) return stretch;
    // The voltage may have settled long before the frequency has.
    const { from } = settledStretch(stretch, 0, stretch.length - 1, SETTLED_RATIO / periodS);
    return stretch.slice(from);
  };
  const before = settled(move.before.from, move.before.last);
  const after = settled(move.after.from, move.last);
  const moving = frequencyHz
    .slice(move.from, move.last + 1)
    .filter((_, i) => timeS[move.from + i]! - atS >= periodS / 2);
  // Neighbouring cycles share most of the samples that their zeros are told from: two cycles apart they don't.
  const deviation = scatterOf(before);
  const figure = (hertz: number, count: number): Figure =>
    budgeted(hertz, [
      scatter('noise', deviation / Math.sqrt(Math.max(1, count / 4)), 'Hz', 1),
      alikeWithin('time base', chain.instrument.timeBasePpm, 'ppm', hertz / 1e6),
    ]);
  const levelOf = (cycles: Float64Array): Figure =>
    cycles.length === 0
      ? UNSEEN
      : figure(cycles.reduce((sum, x) => sum + x, 0) / cycles.length, cycles.length);
  const beforeHz = levelOf(before);
  return {
    beforeHz,
    afterHz: levelOf(after),
    extremeHz:
      beforeHz.value === null || moving.length === 0
        ? UNSEEN
        : figure(moving[farthest(moving, [0, moving.length - 1], beforeHz.value)]!, 1),
  };
}

const UNSEEN: Figure = missing({ code: 'frequency.fewCycles' });

function scatterOf(values: Float64Array): number {
  if (values.length < 2) return 0;
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
  return Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (values.length - 1));
}

/**
 * Index of the value farthest from a level, among values[from … last].
 *
 * @param values - shape N. Not changed.
 * @example farthest(Float64Array.of(5, 1, 6), [0, 2], 5) // 1
 */
export function farthest(
  values: Float64Array,
  [from, last]: readonly [number, number],
  level: number,
): number {
  let far = from;
  for (let k = from; k <= last; k++) {
    if (Math.abs(values[k]! - level) > Math.abs(values[far]! - level)) far = k;
  }
  return far;
}
