import type { HalfCycleRms } from '../envelope/halfCycleRms.ts';
import { type Move, STEP_RATIO } from './envelopeMoves.ts';
import type { LoadStep } from './loadStep.ts';

export interface DirectionLevels {
  /** The Urms(1/2) farthest from before. */
  readonly extreme: number;
  /** Nominal, or the level before, in the unit of the RMS. */
  readonly reference: number;
}

/** Of the larger current: a change over it says which way the load went. */
const CURRENT_RATIO = 0.05;

/**
 * Whether a load was thrown on or off: by the current where it changes, else on when the voltage falls.
 *
 * Levels before and after that differ by less than a step count as equal; then the extreme decides.
 *
 * @param current - on the voltage's cycles; null: not recorded.
 */
export function stepDirection(
  voltage: HalfCycleRms,
  current: HalfCycleRms | null,
  move: Move,
  { extreme, reference }: DirectionLevels,
): Pick<LoadStep, 'direction' | 'directionBy'> {
  const byCurrent = current === null ? null : currentDirection(current, voltage, move);
  if (byCurrent !== null) return { direction: byCurrent, directionBy: 'current' };
  const [before, after] = [move.before.mean, move.after.mean];
  const change = Math.abs(after - before);
  const isEqual = change < STEP_RATIO * reference && Math.abs(extreme - before) > change;
  return { direction: (isEqual ? extreme : after) < before ? 'on' : 'off', directionBy: 'voltage' };
}

/** By what the current settles at; null where that hardly changes. */
function currentDirection(current: HalfCycleRms, voltage: HalfCycleRms, move: Move): 'on' | 'off' | null {
  const meanBetween = (first: number, last: number): number => {
    const [fromS, toS] = [voltage.timeS[first]!, voltage.timeS[last]!];
    const values = current.rms.filter((_, k) => current.timeS[k]! >= fromS && current.timeS[k]! <= toS);
    return values.reduce((sum, x) => sum + x, 0) / values.length;
  };
  const before = meanBetween(move.before.from, move.before.last);
  const after = meanBetween(move.after.from, move.after.last);
  // Written so that a stretch without a single current value (0/0) says nothing.
  if (!(Math.abs(after - before) > CURRENT_RATIO * Math.max(before, after))) return null;
  return after > before ? 'on' : 'off';
}
