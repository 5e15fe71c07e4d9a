import { budgeted } from '../measure/doubt/budget.ts';
import { within } from '../measure/doubt/component.ts';
import { median, orderStatistic } from '../signal/statistics.ts';
import type { LogMeter } from './doubt/logMeter.ts';
import { counterStep } from './doubt/runDoubts.ts';
import { type LogFigure, none } from './doubt/runFigures.ts';
import type { EnergyLog, LogCounter } from './log/energyLog.ts';
import type { EnergyNotice } from './notices.ts';
import type { Course } from './runs/course.ts';
import { intervalMean } from './runs/rowHours.ts';

/** What the log itself counted, beside what its rows add up to. */
interface CounterResult {
  /** Of the column; of a total, where it stands. */
  readonly name: string;
  readonly energyWh: LogFigure;
  readonly chargeAh?: LogFigure;
  /** Counted over ours. */
  readonly ratioPercent: LogFigure;
}

interface Counted {
  readonly counters: readonly CounterResult[];
  readonly notices: readonly EnergyNotice[];
}

/** Beyond its doubt and by more than this a counter is off, %. */
const LEAST_DIFFERENCE_PERCENT = 1;

/**
 * Each counter and total of a log held against what its rows add up to.
 *
 * @param excluded - holes that no run counts: there is nothing of ours to hold a counter against.
 * @param sums - of the log's runs that bear a load: of each kind, Wh and Ah.
 */
export function heldCounters(
  log: EnergyLog,
  course: Course | null,
  meter: LogMeter | null,
  excluded: ReadonlySet<number>,
  sums: readonly LoadSum[],
): Counted {
  const results: CounterResult[] = [];
  const notices: EnergyNotice[] = [];
  for (const counter of log.counters) {
    const counted = movedInAll(log, counter);
    const ours = ownSum(log, course, counter, excluded);
    const step = counterStep(counter.step, counted.runs);
    const gain = within('power gain', meter?.powerGainPercent ?? 0, '%', counted.sum / 100);
    const figure = budgeted(counted.sum, [gain, step]);
    const ratio =
      ours === null || ours.sum <= 0
        ? none('there is nothing in the log to hold it against')
        : budgeted((100 * ours.counted) / ours.sum, [
            { ...step, sensitivity: 100 / ours.sum },
            within('changes between rows', ours.betweenRows, 'Wh', (100 * ours.counted) / ours.sum ** 2),
          ]);
    const isEnergy = counter.quantity === 'energy';
    results.push({
      name: counter.name,
      energyWh: isEnergy ? figure : none('it counts charge'),
      ...(isEnergy ? {} : { chargeAh: figure }),
      ratioPercent: ratio,
    });
    if (isOff(ratio) && course?.from !== 'counter') {
      const seconds = isEnergy ? fixedStepS(log, course, counter) : null;
      const fact = { name: counter.name, ratioPercent: ratio.value! };
      notices.push(
        seconds === null
          ? { code: 'counter.differs', ...fact }
          : { code: 'counter.fixedStep', ...fact, seconds },
      );
    }
  }
  for (const { quantity, value, place } of log.totals) {
    const unit = quantity === 'energy' ? 'Wh' : 'Ah';
    const figures = sums.flatMap(({ energyWh, chargeAh }) => {
      const figure = quantity === 'energy' ? energyWh : chargeAh;
      return figure.value === null || figure.value === 0 ? [] : [figure];
    });
    // A log that goes both ways has a total of one of them: the one that it is like.
    const [nearest] = figures.sort((a, b) => Math.abs(a.value / value - 1) - Math.abs(b.value / value - 1));
    const total = budgeted(value, []);
    const ratio =
      nearest === undefined
        ? none('there is nothing in the log to hold it against')
        : budgeted((100 * value) / nearest.value, [
            within('ours', nearest.uncertainty, unit, (100 * value) / nearest.value ** 2),
          ]);
    results.push({
      name: place,
      energyWh: quantity === 'energy' ? total : none('it is a charge'),
      ...(quantity === 'energy' ? {} : { chargeAh: total }),
      ratioPercent: ratio,
    });
    if (isOff(ratio)) notices.push({ code: 'total.differs', place, unit, value, ratioPercent: ratio.value! });
  }
  return { counters: results, notices };
}

export interface LoadSum {
  readonly energyWh: LogFigure;
  readonly chargeAh: LogFigure;
}

function isOff(ratio: LogFigure): boolean {
  return (
    ratio.value !== null &&
    Math.abs(ratio.value - 100) > Math.max(LEAST_DIFFERENCE_PERCENT, ratio.uncertainty)
  );
}

/** All that a counter counted, resets apart. */
function movedInAll(
  { partStarts }: EnergyLog,
  { values, kind }: LogCounter,
): { readonly sum: number; readonly runs: number } {
  let [sum, runs, last] = [0, 1, Number.NaN];
  const starts = new Set(partStarts);
  for (let row = 0; row < values.length; row++) {
    const value = values[row]!;
    if (Number.isNaN(value)) continue;
    if (starts.has(row) && row > 0) last = Number.NaN;
    if (kind === 'per interval') sum += Math.abs(value);
    else if (!Number.isNaN(last)) {
      const moved = movedBy(kind, last, value);
      if (moved === null) runs++;
      else sum += moved;
    }
    last = value;
  }
  return { sum, runs };
}

/** What a counter moved from one reading to the next; null where it was reset, or a gauge went up again. */
function movedBy(kind: LogCounter['kind'], last: number, value: number): number | null {
  if (kind === 'remaining') return value > last ? null : last - value;
  const moved = Math.abs(value) - Math.abs(last);
  return moved < 0 ? null : moved;
}

/** Ours and the counter's over the intervals that both saw. */
function ownSum(
  { timesS, partStarts }: EnergyLog,
  course: Course | null,
  counter: LogCounter,
  excluded: ReadonlySet<number>,
): { readonly sum: number; readonly counted: number; readonly betweenRows: number } | null {
  if (course === null || course.from === 'counter') return null;
  const signed = counter.quantity === 'energy' ? course.watts : course.amps;
  if (signed === null || timesS.length !== course.timesS.length) return null;
  const flow = signed.map(Math.abs);
  const starts = new Set(partStarts);
  let [sum, counted, squares] = [0, 0, 0];
  for (let at = 0; at + 1 < flow.length; at++) {
    if (excluded.has(at) || starts.has(at + 1)) continue;
    const [last, value] = [counter.values[at]!, counter.values[at + 1]!];
    const moved = counter.kind === 'per interval' ? Math.abs(value) : movedBy(counter.kind, last, value);
    if (moved === null || Number.isNaN(moved)) continue;
    const hours = (timesS[at + 1]! - timesS[at]!) / 3600;
    sum += hours * intervalMean(course, flow, at);
    if (course.sampling === 'instantaneous') squares += (0.5 * (flow[at + 1]! - flow[at]!) * hours) ** 2;
    counted += moved;
  }
  return { sum, counted, betweenRows: Math.sqrt(squares) };
}

/**
 * The seconds that a counter adds its power for at each row, where they are the same whatever the clock says.
 *
 * @returns null where there are none such: the counter integrates, or its steps are too coarse to tell.
 */
function fixedStepS(log: EnergyLog, course: Course | null, counter: LogCounter): number | null {
  if (course?.watts == null || course.watts.length !== counter.values.length) return null;
  const seconds: number[] = [];
  const intervals: number[] = [];
  for (let at = 0; at + 1 < counter.values.length; at++) {
    const moved = movedBy(counter.kind, counter.values[at]!, counter.values[at + 1]!);
    const watts = Math.abs(course.watts[at + 1]!);
    if (moved === null || moved < 5 * counter.step || watts === 0) continue;
    seconds.push((3600 * moved) / watts);
    intervals.push(log.timesS[at + 1]! - log.timesS[at]!);
  }
  if (seconds.length < 20) return null;
  const usual = median(seconds);
  const spread = (values: readonly number[], middle: number): number =>
    orderStatistic(
      Float64Array.from(values, (value) => Math.abs(value - middle)),
      Math.floor(0.8 * (values.length - 1)),
    ) / middle;
  const mean = intervals.reduce((sum, one) => sum + one, 0) / intervals.length;
  return spread(seconds, usual) < 0.03 && spread(intervals, mean) > 0.03 ? usual : null;
}
