import { budgeted } from '../../measure/doubt/budget.ts';
import { within } from '../../measure/doubt/component.ts';
import { median } from '../../signal/statistics.ts';
import type { RunSums } from '../doubt/runDoubts.ts';
import { type LogFigure, none } from '../doubt/runFigures.ts';
import { intervalHours, intervalMean } from './rowHours.ts';

/** What a charger does. */
export interface ChargePhases {
  /** Seconds at constant current, and at constant voltage. */
  readonly ccS: LogFigure;
  readonly cvS: LogFigure;
  /** From its start until 80 % and all of the energy was put in. */
  readonly to80S: LogFigure;
  readonly toFullS: LogFigure;
  /** How many sources charge at once. */
  readonly sources: LogFigure;
}

/** Constant current: within this of its plateau. Constant voltage: within this of its top. Common practice, no source. */
const [CURRENT_BAND, VOLTAGE_BAND] = [0.02, 0.003];
/** A charge that ends at less than this share of its plateau has tapered. Common practice, no source. */
const TAPER_SHARE = 0.8;

/**
 * The phases of a charge, and how long it takes by the energy put in, not by a gauge.
 *
 * @param sums - of a run of kind charge.
 */
export function chargePhases(sums: RunSums): ChargePhases {
  return { ...constantPhases(sums), ...chargeTimes(sums), sources: none('the log tells no sources apart') };
}

function constantPhases(sums: RunSums): Pick<ChargePhases, 'ccS' | 'cvS'> {
  const { course, run, amps } = sums;
  const { volts } = course;
  if (amps === null || volts === null) {
    const why = none('phases of a charge show in volts and amperes of the DC side');
    return { ccS: why, cvS: why };
  }
  let top = 0;
  for (let row = run.first; row <= run.last; row++) top = Math.max(top, volts[row]!);
  const isAtTop = (row: number): boolean => volts[row]! >= (1 - VOLTAGE_BAND) * top;
  const rising: number[] = [];
  for (let row = run.first; row <= run.last; row++) if (!isAtTop(row)) rising.push(amps[row]!);
  // A charge that is at its top from the start has no plateau.
  const plateau = rising.length < 3 ? 0 : median(rising);
  let lastConstant = -1;
  for (let row = run.first; row <= run.last; row++) {
    if (plateau > 0 && amps[row]! >= (1 - CURRENT_BAND) * plateau) lastConstant = row;
  }
  const fallen = lastConstant < 0 ? run.first : lastConstant;
  let firstAtTop = -1;
  for (let row = run.last; row > fallen && isAtTop(row); row--) firstAtTop = row;
  return {
    ccS: lastConstant < 0 ? seconds(sums, 0, 0) : seconds(sums, run.first, lastConstant),
    cvS: firstAtTop < 0 ? seconds(sums, 0, 0) : seconds(sums, firstAtTop - 1, run.last),
  };
}

/** From one row to another, each known to the interval behind it. */
function seconds({ course, meter }: RunSums, from: number, to: number): LogFigure {
  const value = course.timesS[to]! - course.timesS[from]!;
  if (value === 0) return budgeted(0, []);
  return budgeted(value, [
    within('start between rows', 3600 * intervalHours(course, from), 's', 1),
    within('end between rows', 3600 * intervalHours(course, to - 1), 's', 1),
    within('clock', meter.clockPpm, 'ppm', value / 1e6),
  ]);
}

function chargeTimes(sums: RunSums): Pick<ChargePhases, 'to80S' | 'toFullS'> {
  const { course, run, watts, amps } = sums;
  // Without volts, the charge itself tells how far it is.
  const flow = watts ?? amps!;
  const plateau = median(flow.subarray(run.first, run.last + 1));
  if (!(flow[run.last]! < TAPER_SHARE * plateau)) {
    const why = none('the charge does not taper off in this log: when it is full is not known');
    return { to80S: why, toFullS: why };
  }
  const soFar = new Float64Array(run.last - run.first + 1);
  for (let at = run.first; at < run.last; at++) {
    const counted = intervalMean(course, flow, at) * intervalHours(course, at);
    soFar[at + 1 - run.first] = soFar[at - run.first]! + counted;
  }
  const whole = soFar.at(-1)!;
  const next = soFar.findIndex((sum) => sum >= 0.8 * whole);
  const [low, high] = [soFar[next - 1]!, soFar[next]!];
  const at = run.first + next;
  const [early, late] = [course.timesS[at - 1]!, course.timesS[at]!];
  const reached = early + ((0.8 * whole - low) / (high - low)) * (late - early);
  return {
    to80S: elapsed(sums, reached - course.timesS[run.first]!, late - early),
    toFullS: elapsed(
      sums,
      course.timesS[run.last]! - course.timesS[run.first]!,
      3600 * intervalHours(course, run.last),
    ),
  };
}

function elapsed({ course, run, meter }: RunSums, value: number, endS: number): LogFigure {
  return budgeted(value, [
    within('start between rows', 3600 * intervalHours(course, run.first - 1), 's', 1),
    within('end between rows', endS, 's', 1),
    within('clock', meter.clockPpm, 'ppm', value / 1e6),
  ]);
}
