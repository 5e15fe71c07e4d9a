import type { Figure } from '../../base/figure.ts';
import { extremes } from '../../signal/statistics.ts';
import type { HalfCycleRms, MeasuringChain } from '../envelope.ts';
import { type EnvelopeMoves, type Move, STEP_RATIO } from './envelopeMoves.ts';
import { currentTimeS } from './eventLoads.ts';
import { farthest, frequencyFigures } from './frequencyFigures.ts';
import { type LoadStep, stepTimeS } from './loadStep.ts';
import { percentFigure, recoveryFigure, type StepRecord, timeFigure, voltageFigure } from './stepFigures.ts';

/** Bands around the level after a step, in % of nominal, that its recovery is given for. */
const RECOVERY_BANDS_PERCENT = [1, 2, 5, 10] as const;
/** The band of `recoveryS`. */
const MAIN_BAND_PERCENT = 2;

interface LoadStepOptions {
  /** In the unit of the RMS; null: unknown, then nothing is given in % of it. */
  readonly nominal: number | null;
  readonly chain: MeasuringChain;
  /** How far two cycles of one wave may differ for where their samples fall, of `rmsBetweenSamples`. */
  readonly betweenSamples: number;
}

/**
 * The moves that are steps of the load: breaks of the voltage are none, nor is what neither a current nor the voltage
 * shows.
 *
 * @param current - on the voltage's cycles; null: not recorded.
 */
export function stepMoves(
  voltage: HalfCycleRms,
  current: HalfCycleRms | null,
  { moves, scatter }: EnvelopeMoves,
  { nominal, betweenSamples }: Omit<LoadStepOptions, 'chain'>,
): readonly Move[] {
  const jumpy = { scatter, nominal, betweenSamples };
  return moves.filter((move, i) => {
    if (move.isBreak) return false;
    if (current !== null && currentDirection(current, voltage, move) !== null) return true;
    const extreme = extremeOf(voltage.rms, move).value;
    const ahead = voltage.rms.subarray(moves[i - 1]?.after.from ?? 0, move.before.last + 1);
    return differ(move.before.mean, move.after.mean, extreme, jumpy) && !isWander(move, extreme, ahead);
  });
}

/** Of what a change goes by: a voltage that moved by so much ahead of it was at no level. */
const WANDERS = 1 / 3;
/** Of the level before: what is farther from it is a supply that comes or goes, no wander. */
const LIT = 0.1;

/**
 * Whether a change is a part of a voltage that goes up and down all along, as a slow ripple makes it: it comes to no
 * level, and the voltage ahead of it was at none. A record of a few cycles doesn't show how restless it is otherwise.
 *
 * @param ahead - RMS of the half cycles between the move before, or the record's beginning, and this one.
 */
function isWander({ before, after }: Move, extreme: number, ahead: Float64Array): boolean {
  if (after.settled) return false;
  const { min, max } = extremes(ahead.filter((rms) => Math.abs(rms - before.mean) < LIT * before.mean));
  return !before.settled || max - min > WANDERS * Math.abs(extreme - before.mean);
}

/** The load steps among the moves of a supply, in time order; empty where nothing steps. */
export function loadSteps(
  voltage: HalfCycleRms,
  current: HalfCycleRms | null,
  moves: EnvelopeMoves,
  { nominal, chain, betweenSamples }: LoadStepOptions,
): readonly LoadStep[] {
  const { scatter } = moves;
  return stepMoves(voltage, current, moves, { nominal, betweenSamples }).map((move) => {
    const periodS = 1 / voltage.frequencyHz[move.from]!;
    const record = { ...voltage, nominal, scatter, betweenSamples, periodS, chain };
    return stepOf(voltage, current, move, record);
  });
}

/** Of nominal: levels that differ by less are one, whatever the record's own scatter. */
const SAME_RATIO = 0.003;

/** The voltage after, or at its farthest, can be told from that before. */
function differ(
  before: number,
  after: number,
  extreme: number,
  { scatter, nominal, betweenSamples }: Pick<JumpyRecord, 'scatter' | 'nominal' | 'betweenSamples'>,
): boolean {
  const least = Math.max(SAME_RATIO * (nominal ?? before), 4 * scatter) + betweenSamples;
  return Math.abs(after - before) > least || Math.abs(extreme - before) > least;
}

type JumpyRecord = StepRecord & Pick<LoadStepOptions, 'betweenSamples'>;

function stepOf(
  voltage: HalfCycleRms,
  current: HalfCycleRms | null,
  move: Move,
  record: JumpyRecord,
): LoadStep {
  const { before, after } = move;
  const far = extremeOf(voltage.rms, move);
  // A stiff voltage doesn't tell when; the current does.
  const atS =
    current !== null && !differ(before.mean, after.mean, far.value, record)
      ? currentTimeS(current, voltage, move)
      : stepTimeS(voltage, move, record.scatter);
  const counts = { before: before.last + 1 - before.from, after: after.last + 1 - after.from };
  const recovery = (bandPercent: number): Figure =>
    recoveryFigure(
      record,
      [move.from, move.last],
      { atS, after: after.mean, settled: after.settled },
      bandPercent,
    );
  return {
    atS: timeFigure(atS, record),
    ...stepDirection(voltage, current, move, {
      extreme: far.value,
      reference: record.nominal ?? before.mean,
    }),
    before: voltageFigure(before.mean, counts.before, record),
    after: voltageFigure(after.mean, counts.after, record),
    extreme: voltageFigure(far.value, far.count, record),
    deviationPercent: percentFigure(far.value - before.mean, [far.count, counts.before], record),
    afterPercent: percentFigure(after.mean - before.mean, [counts.after, counts.before], record),
    overshootPercent: percentFigure(overshoot(voltage.rms, move, far), [1, counts.after], record),
    recoveryS: recovery(MAIN_BAND_PERCENT),
    recovery: RECOVERY_BANDS_PERCENT.map((bandPercent) => ({ bandPercent, s: recovery(bandPercent) })),
    ...frequencyFigures(voltage, move, atS, record),
    ...sampleRanges(voltage, move, atS),
  };
}

/** The settled stretches and what lies between; half a cycle around the step belongs to neither. */
function sampleRanges(
  { timeS, frequencyHz, from, to }: HalfCycleRms,
  { before, after }: Move,
  atS: number,
): Pick<LoadStep, 'settledBefore' | 'settledAfter' | 'moving'> {
  const period = to[before.last]! - from[before.last]!;
  const at =
    (from[before.last]! + to[before.last]!) / 2 +
    (atS - timeS[before.last]!) * frequencyHz[before.last]! * period;
  const settledBefore = {
    from: Math.ceil(from[before.from]!),
    to: Math.floor(Math.min(to[before.last]!, at - period / 4)) + 1,
  };
  const settledAfter = {
    from: Math.ceil(Math.max(from[after.from]!, at + period / 4)),
    to: Math.floor(to[after.last]!) + 1,
  };
  return { settledBefore, settledAfter, moving: { from: settledBefore.to, to: settledAfter.from } };
}

interface Extreme {
  readonly index: number;
  readonly value: number;
  /** How many values it is made of. */
  readonly count: number;
}

/** The value farthest from before, or the level after where nothing goes beyond it. */
function extremeOf(rms: Float64Array, { from, before, after }: Move): Extreme {
  const index = farthest(rms, [from, Math.max(from, Math.min(after.last, after.from))], before.mean);
  const beyond = Math.abs(rms[index]! - before.mean) > Math.abs(after.mean - before.mean);
  return beyond
    ? { index, value: rms[index]!, count: 1 }
    : { index, value: after.mean, count: after.last + 1 - after.from };
}

/** How far past the level after it the voltage goes once it has turned back; 0 where it doesn't. */
function overshoot(rms: Float64Array, { before, after }: Move, extreme: Extreme): number {
  // Beyond the level after, seen from the extreme; where that is the level itself, seen from before.
  const sign = Math.sign(after.mean - extreme.value) || Math.sign(after.mean - before.mean);
  let most = 0;
  for (let k = extreme.index; k < after.from; k++) most = Math.max(most, sign * (rms[k]! - after.mean));
  return most;
}

interface DirectionLevels {
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
function stepDirection(
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
