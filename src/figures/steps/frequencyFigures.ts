import type { Figure } from '../../base/figure.ts';
import type { HalfCycleRms } from '../envelope/halfCycleRms.ts';
import { budgeted } from '../uncertainty/budget.ts';
import { scatter, within } from '../uncertainty/component.ts';
import type { Move } from './envelopeMoves.ts';
import { farthest } from './farthest.ts';
import type { LoadStep } from './loadStep.ts';
import type { StepRecord } from './stepFigures.ts';

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
  const cyclesOf = (first: number, last: number, isWanted: (k: number) => boolean): Float64Array =>
    frequencyHz.slice(first, last + 1).filter((_, i) => isWanted(first + i));
  const isSeen = (k: number): boolean => seen[k] === 1;
  const before = cyclesOf(move.before.from, move.before.last, isSeen);
  const after = cyclesOf(move.after.from, move.after.last, isSeen);
  const moving = cyclesOf(move.from, move.last, (k) => timeS[k]! - atS >= periodS / 2);
  // Neighbouring cycles share most of the samples that their zeros are told from: two cycles apart they don't.
  const deviation = scatterOf(before);
  const figure = (hertz: number, count: number): Figure =>
    budgeted(hertz, [
      scatter('noise', deviation / Math.sqrt(Math.max(1, count / 4)), 'Hz', 1),
      within('time base', chain.instrument.timeBasePpm, 'ppm', hertz / 1e6),
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

const UNSEEN: Figure = { value: null, reason: 'too few cycles to tell the frequency' };

function scatterOf(values: Float64Array): number {
  if (values.length < 2) return 0;
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
  return Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (values.length - 1));
}
