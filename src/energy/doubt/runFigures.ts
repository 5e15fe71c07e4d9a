import type { MissingFigure } from '../../base/figure.ts';
import { type BudgetedFigure, budgeted } from '../../measure/doubt/budget.ts';
import { type Component, within } from '../../measure/doubt/component.ts';
import type { Course } from '../runs/course.ts';
import { type Integral, integral, runTime, standingHours } from '../runs/integrals.ts';
import { intervalHours } from '../runs/rowHours.ts';
import type { Run } from '../runs/runs.ts';
import type { LogMeter } from './logMeter.ts';
import { chargeDoubts, energyDoubts, levelDoubts, type RunSums } from './runDoubts.ts';

/** A figure with how its doubt is made up, or why there is none. */
export type LogFigure = BudgetedFigure | MissingFigure<string>;

/** Every run has these. */
export interface RunFigures {
  readonly durationS: LogFigure;
  readonly energyWh: LogFigure;
  readonly chargeAh: LogFigure;
  readonly meanPowerW: LogFigure;
  readonly maxPowerW: LogFigure;
  readonly meanVoltageV: LogFigure;
  readonly startVoltageV: LogFigure;
  readonly endVoltageV: LogFigure;
}

export function none(reason: string): LogFigure {
  return { value: null, reason };
}

/** A run's rows in its own direction, and their sums. */
export function sumsOf(course: Course, run: Run, holes: ReadonlySet<number>, meter: LogMeter): RunSums {
  const time = runTime(course, run, holes);
  const sign = run.kind === 'charge' ? -1 : 1;
  const turned = (values: Float64Array | null): Float64Array | null =>
    values === null || sign === 1 ? values : values.map((value) => -value);
  const [watts, amps] = [turned(course.watts), turned(course.amps)];
  const sum = (values: Float64Array | null): Integral | null =>
    values === null ? null : integral(course, run, time, values, holes);
  return { course, run, time, meter, holes, watts, amps, energy: sum(watts), charge: sum(amps) };
}

/** What a run comes to, each figure with its doubt. */
export function runFigures(sums: RunSums): RunFigures {
  const { course, energy, charge } = sums;
  const noWatts = course.whyNoWatts ?? 'the log has no watts';
  const noAmps =
    course.side === 'ac' ? 'amperes of AC add up to no charge' : 'the log has no amperes of a DC side';
  const energyWh = energy === null ? none(noWatts) : budgeted(Math.abs(energy.sum), energyDoubts(sums));
  const chargeAh = charge === null ? none(noAmps) : budgeted(Math.abs(charge.sum), chargeDoubts(sums));
  return {
    durationS: durationFigure(sums),
    energyWh,
    chargeAh,
    meanPowerW: energy === null ? none(noWatts) : meanPower(sums, energy),
    maxPowerW: energy === null ? none(noWatts) : maxPower(sums),
    meanVoltageV: meanVoltage(sums, noWatts, noAmps),
    ...endVoltages(sums),
  };
}

/** From the first row under load to the last. */
function durationFigure({ course, run, meter, holes }: RunSums): LogFigure {
  const { sampling, timesS, stampS } = course;
  const lengthS = (at: number): number => (holes.has(at) ? 0 : 3600 * intervalHours(course, at));
  const [before, behind] = [lengthS(run.first - 1), lengthS(run.last)];
  const seen = timesS[run.last]! - timesS[run.first]!;
  // A mean is of the time before its row, a held value of the time behind it.
  const value =
    seen + (sampling === 'mean until the row' ? before : sampling === 'held from the row' ? behind : 0);
  const isInstant = sampling === 'instantaneous';
  return budgeted(value, [
    within('start between rows', isInstant ? before : 0, 's', 1),
    within('end between rows', isInstant ? behind : 0, 's', 1),
    within('stamps', stampS / 2, 's', Math.SQRT2),
    within('clock', meter.clockPpm, 'ppm', value / 1e6),
  ]);
}

/** Energy over time, both from the first row to the last: what lies before and behind is no part of a mean. */
function meanPower(sums: RunSums, energy: Integral): LogFigure {
  const { course, run, watts, time } = sums;
  let wattHours = 0;
  let hours = 0;
  for (let at = run.first; at < run.last; at++) {
    const length = intervalHours(course, at);
    const [a, b] = [watts![at]!, watts![at + 1]!];
    const mean =
      course.sampling === 'instantaneous' ? (a + b) / 2 : course.sampling === 'held from the row' ? a : b;
    wattHours += mean * length;
    hours += length;
  }
  const value = hours > 0 ? wattHours / hours : watts![run.first]!;
  const scale = time.total > 0 ? 1 / time.total : 0;
  const scaled = (component: Component): Component => ({
    ...component,
    sensitivity: component.sensitivity * scale,
  });
  const inner = within('changes between rows', energy.betweenRows, 'Wh', scale);
  return budgeted(Math.abs(value), [...levelDoubts(sums).map(scaled), { ...inner, distribution: 'normal' }]);
}

function maxPower(sums: RunSums): LogFigure {
  const { course, run, watts, meter } = sums;
  let at = run.first;
  for (let row = run.first; row <= run.last; row++) if (watts![row]! > watts![at]!) at = row;
  const value = Math.max(0, watts![at]!);
  if (course.from === 'volts and amperes') {
    const [volts, amps] = [course.volts![at]!, Math.abs(course.amps![at]!)];
    return budgeted(value, [
      within('voltage gain', meter.voltageGainPercent, '%', value / 100),
      within('current gain', meter.currentGainPercent, '%', value / 100),
      within('voltage offset', meter.offsetV, 'V', amps),
      within('current offset', meter.offsetA, 'A', volts),
      within('resolution of the volts', course.steps.volts / 2, 'V', amps),
      within('resolution of the amperes', course.steps.amps / 2, 'A', volts),
    ]);
  }
  return budgeted(value, [
    within('power gain', meter.powerGainPercent, '%', value / 100),
    within('power offset', course.from === 'counter' ? 0 : meter.offsetW, 'W', 1),
    within('resolution', course.loadStep / 2, 'W', 1),
  ]);
}

/** Energy over charge. */
function meanVoltage(sums: RunSums, noWatts: string, noAmps: string): LogFigure {
  const { energy, charge, course, run, time, meter } = sums;
  if (course.side === 'ac') return none('energy over charge is a voltage on DC alone');
  if (energy === null) return none(noWatts);
  if (charge === null) return none(noAmps);
  if (Math.abs(charge.sum) <= meter.offsetA * time.total)
    return none('no charge flowed that could be told from none');
  const value = energy.sum / charge.sum;
  const bySource: readonly Component[] =
    course.from === 'volts and amperes'
      ? [
          within('voltage gain', meter.voltageGainPercent, '%', value / 100),
          within('voltage offset', meter.offsetV, 'V', 1),
          within(
            'resolution of the volts',
            course.steps.volts / 2,
            'V',
            standingHours(run, time, course.volts!, sums.amps).root / Math.abs(charge.sum),
          ),
        ]
      : [
          within('power gain', meter.powerGainPercent, '%', value / 100),
          within('power offset', meter.offsetW, 'W', time.total / charge.sum),
          within('current gain', meter.currentGainPercent, '%', -value / 100),
          within('current offset', meter.offsetA, 'A', (-value * time.total) / charge.sum),
        ];
  return budgeted(value, bySource);
}

/** Of the first and the last row under load: the row behind it is the rebound. */
function endVoltages({ course, run, meter }: RunSums): Pick<RunFigures, 'startVoltageV' | 'endVoltageV'> {
  const why =
    course.side === 'ac'
      ? 'of a DC side alone'
      : course.volts === null
        ? 'the log has no volts'
        : run.kind === 'off'
          ? 'nothing is drawn'
          : null;
  if (why !== null) return { startVoltageV: none(why), endVoltageV: none(why) };
  const at = (row: number): LogFigure => {
    const value = course.volts![row]!;
    if (Number.isNaN(value)) return none('the log has no volts in that row');
    return budgeted(value, [
      within('voltage gain', meter.voltageGainPercent, '%', value / 100),
      within('voltage offset', meter.offsetV, 'V', 1),
      within('resolution of the volts', course.steps.volts / 2, 'V', 1),
    ]);
  };
  return { startVoltageV: at(run.first), endVoltageV: at(run.last) };
}
