import type { CaptureSource } from '../assay/assayOptions.ts';
import { heldCounters } from './counters.ts';
import { type LogMeter, logMeter } from './doubt/logMeter.ts';
import type { RunSums } from './doubt/runDoubts.ts';
import { type LogFigure, none, runFigures, sumsOf } from './doubt/runFigures.ts';
import type { GapResult, RunResult } from './energyDocument.ts';
import { energyError } from './energyErrors.ts';
import type { EnergyLog } from './log/energyLog.ts';
import type { LogAssay, LogTold, ShownRun } from './logAssay.ts';
import type { EnergyNotice } from './notices.ts';
import { scaledFigure } from './ratios/quotient.ts';
import { ratiosOf } from './ratios/ratios.ts';
import { chargePhases } from './runs/chargePhases.ts';
import { type Course, courseOf } from './runs/course.ts';
import { cycleFigures } from './runs/cycleFigures.ts';
import { idleFigures } from './runs/idleFigures.ts';
import { type Run, runsOf } from './runs/runs.ts';

/**
 * What a log comes to: its runs with their figures, its holes, its own counters held against them, ratios.
 *
 * @throws MeasureError `log.noLoad` where no column of it tells what flows.
 */
export function assayLog(log: EnergyLog, { file, sha256 }: CaptureSource, told: LogTold = {}): LogAssay {
  const course = courseOf(log);
  if (course === null || course.timesS.length === 0) throw energyError('log.noLoad', {});
  const meter = logMeter(course, told.instrument ?? {});
  const { runs: found, holes } = runsOf(course, told.ratedWh);
  const every = new Set(holes);
  const sums = found.map((run) => sumsOf(course, run, every, meter));
  const notices: EnergyNotice[] = [...log.notices];
  const bare = sums.map((one) => runResult(one, told, notices));
  const runs = bare.map((run, i) => withIdle(run, i, bare, sums, told));
  const shown = runs.map((run, i): ShownRun => ({ ...run, isOpen: isOpen(course, found[i]!, every) }));
  const counted = new Set(found.flatMap((run) => run.holes));
  const excluded = new Set(holes.filter((at) => !counted.has(at)));
  const loaded = runs.filter(({ kind }) => kind === 'discharge' || kind === 'charge' || kind === 'cycling');
  const held = heldCounters(log, course, meter, excluded, loaded);
  notices.push(...held.notices, ...doubtsOf(course, found, runs, holes, counted, told, meter));
  const { durationS } = spanOf(log);
  const { startTime } = log.clock;
  return {
    shown: { side: log.side, runs: shown },
    result: {
      file,
      sha256,
      ...(told.label === undefined ? {} : { label: told.label }),
      log: {
        rows: log.rows,
        ...(startTime === null ? {} : { startTime }),
        ...{ durationS, side: log.side, layout: log.layout, columns: log.columns },
      },
      runs,
      gaps: holes.map((at) => gapResult(course, at, counted.has(at))),
      counters: held.counters,
      ratios: ratiosOf(shown, log.side, told),
      claims: [],
      notices,
    },
  };
}

function spanOf({ timesS }: EnergyLog): { readonly durationS: number } {
  let [first, last] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const time of timesS) {
    if (time < first) first = time;
    if (time > last) last = time;
  }
  return { durationS: last - first };
}

function runResult(sums: RunSums, { ratedWh }: LogTold, notices: EnergyNotice[]): RunResult<LogFigure> {
  const { course, run } = sums;
  const figures = runFigures(sums);
  const { meanPowerW } = figures;
  const rate =
    ratedWh === undefined
      ? none('the rated energy is not told (--rated)')
      : scaledFigure(meanPowerW, 1 / ratedWh);
  const cycle = run.kind === 'cycling' ? cycleFigures(sums) : null;
  if (cycle !== null && cycle.rowsPerCycle < LEAST_ROWS_PER_CYCLE)
    notices.push({ code: 'cycling.coarse', rowsPerCycle: cycle.rowsPerCycle });
  return {
    kind: run.kind,
    fromS: course.timesS[run.first]!,
    toS: course.timesS[run.last]!,
    ...figures,
    rate,
    ...(run.kind === 'charge' ? { charge: chargePhases(sums) } : {}),
    ...(cycle === null ? {} : { cycle: cycle.figures }),
  };
}

/** With fewer rows a cycle, those rows may beat with it. */
const LEAST_ROWS_PER_CYCLE = 6;

function withIdle(
  run: RunResult<LogFigure>,
  at: number,
  runs: readonly RunResult<LogFigure>[],
  sums: readonly RunSums[],
  { ratedWh }: LogTold,
): RunResult<LogFigure> {
  if (run.kind !== 'idle') return run;
  const next = runs[at + 1];
  const isNext = next !== undefined && sums[at + 1]!.run.first === sums[at]!.run.last + 1;
  return { ...run, idle: idleFigures(run, isNext ? next : undefined, runs, ratedWh) };
}

/** What the log does not show the end of: it stops, or has a hole, where the load is still on. */
function isOpen(
  { partStarts, timesS }: Course,
  { kind, last }: Run,
  holes: ReadonlySet<number>,
): ShownRun['isOpen'] {
  if (kind === 'off' || kind === 'idle') return false;
  return last === timesS.length - 1 || holes.has(last) || partStarts.includes(last + 1);
}

/** From the least to the most that may have flowed: what flowed at its ends where it is counted, else from nothing on. */
function gapResult({ timesS, watts, from }: Course, at: number, isCounted: boolean): GapResult {
  const [fromS, toS] = [timesS[at]!, timesS[at + 1]!];
  if (watts === null) return { fromS, toS, energyWh: { min: null, max: null } };
  const hours = (toS - fromS) / 3600;
  const [a, b] = [Math.abs(watts[at]!), Math.abs(watts[at + 1]!)];
  // A counter counts on where rows are missing.
  if (from === 'counter') return { fromS, toS, energyWh: { min: b * hours, max: Math.max(a, b) * hours } };
  return {
    fromS,
    toS,
    energyWh: { min: isCounted ? Math.min(a, b) * hours : 0, max: Math.max(a, b) * hours },
  };
}

function doubtsOf(
  course: Course,
  found: readonly Run[],
  runs: readonly RunResult<LogFigure>[],
  holes: readonly number[],
  counted: ReadonlySet<number>,
  told: LogTold,
  meter: LogMeter,
): readonly EnergyNotice[] {
  const hoursOf = (of: readonly number[]): number =>
    of.reduce((sum, at) => sum + (course.timesS[at + 1]! - course.timesS[at]!) / 3600, 0);
  const left = holes.filter((at) => !counted.has(at));
  const within = holes.filter((at) => counted.has(at));
  const notices: EnergyNotice[] = [];
  const discharges = runs.filter(({ kind }) => kind === 'discharge');
  if (course.directionAssumed && discharges.length > 0) notices.push({ code: 'direction.assumed' });
  if (left.length > 0) notices.push({ code: 'holes.left', holes: left.length, hours: hoursOf(left) });
  if (within.length > 0)
    notices.push({ code: 'holes.counted', holes: within.length, hours: hoursOf(within) });
  const open = found.find(
    (run) => (run.kind === 'discharge' || run.kind === 'charge') && run.last === course.timesS.length - 1,
  );
  if (open?.kind === 'discharge' || open?.kind === 'charge')
    notices.push({ code: 'run.open', kind: open.kind });
  const energies = discharges.flatMap(({ energyWh }) => (energyWh.value === null ? [] : [energyWh.value]));
  const [largestWh = 0, ...others] = [...energies].sort((a, b) => b - a);
  const togetherWh = energies.reduce((sum, one) => sum + one, 0);
  if (others.length > 0 && togetherWh - largestWh > 0.05 * largestWh)
    notices.push({ code: 'runs.several', discharges: energies.length, largestWh, togetherWh });
  if (course.side === null && (told.ratedWh !== undefined || told.ratedAh !== undefined))
    notices.push({ code: 'side.unknown' });
  const isTold = Object.keys(told.instrument ?? {}).some((key) => /Gain|^offset|^clock/.test(key));
  if (!isTold && course.from !== 'counter')
    notices.push({
      code: 'logMeter.assumed',
      measured: course.from === 'nothing' ? 'amperes' : course.from,
      isAc: course.side === 'ac',
      clockPpm: meter.clockPpm,
    });
  return notices;
}
