import { basename, join } from 'node:path';
import {
  type BenchDocument,
  benchLines,
  benchUnit,
  compareUnits,
  comparisonLines,
} from '../../entry/benching.ts';
import { type CardTheme, capturesOfUnits, publishedNames } from '../../entry/evidence.ts';
import {
  type AssayResult,
  type FailedResult,
  failureLine,
  jsonText,
  MeasureError,
  worded,
} from '../../entry/measuring.ts';
import { exitCodes } from '../failures.ts';
import { failedResult } from '../measureFile.ts';
import { measureFiles } from '../measureFiles.ts';
import { progressLine } from '../progressLine.ts';
import { finishRun } from '../report/finishRun.ts';
import { type FormatFlags, type Formats, formatsOf } from '../report/formatOptions.ts';
import { sheetWriter } from '../report/sheetWriter.ts';
import { ownBenchOutput, unsealed } from '../writing/ownOutput.ts';
import { makeFolder, writeOutput } from '../writing/writeOutput.ts';
import { inOrder, measureUnit, type UnitRun, type UnitTasks, unitTasks } from './measureUnit.ts';
import { earlierUnits, instrumentFiles, type NamedPlan, pathFrom } from './namedPlan.ts';
import { type BenchSheetOptions, writeBenchSheets } from './writeBenchSheets.ts';

export interface BenchFlags extends FormatFlags {
  readonly out: string;
  readonly json?: boolean;
  readonly quiet?: boolean;
  /** Replace what is there, whosesoever it is. */
  readonly force?: boolean;
  /** A sheet of each capture too. */
  readonly sheets?: boolean;
  /** Pictures beside sheets. */
  readonly png?: boolean;
  /** Cards beside sheets; true: light. */
  readonly card?: CardTheme | true;
}

/** Measures a plan, prints what was found, writes bench.json and the sheets, and sets the exit code. */
export async function runBench({ plan, folder }: NamedPlan, flags: BenchFlags): Promise<void> {
  const { units: planned, rule } = plan;
  const files = planned.flatMap(({ captures, steps, transfers }) =>
    [...captures, ...steps, ...transfers].map(({ file }) => pathFrom(folder, file)),
  );
  const { out, force = false, png = false } = flags;
  const card = flags.card === true ? 'light' : (flags.card ?? null);
  const formats = formatsOf(flags);
  const writeSheet = sheetWriter([...new Set(files)], {
    out,
    ...{ png, card },
    formats,
    byChannel: false,
    force,
  });
  const { instruments, failures: unread } = await instrumentFiles(plan, folder);
  const tasks: UnitTasks[] = [];
  for (const unit of planned) tasks.push(await unitTasks(unit, { folder, rule, instruments }));
  const all = tasks.flatMap(inOrder);
  const progress = progressLine(all.length, { quiet: flags.quiet });
  const outcomes = measureFiles(all, progress);
  // A step and a transfer have no other picture than their own.
  const writers = flags.sheets ? { writeSheet } : png || card !== null ? { writeChange: writeSheet } : {};
  const runs = [];
  try {
    for (const unit of tasks) {
      runs.push(await measureUnit(unit, { rule, outcomes, ...writers }));
    }
  } finally {
    // Ends their threads.
    await outcomes.return();
  }
  progress.clear();
  const earlier = await earlierUnits(plan.earlier, folder);
  const failures = [...unread, ...runs.flatMap((run) => run.failures), ...earlier.failures];
  const published = publishedRuns(runs);
  const today = published.map(({ measured }) => benchUnit(measured));
  const units = [...today, ...earlier.units];
  const document: BenchDocument = worded({
    schema: 'sineassay/bench@1',
    units,
    comparison: compareUnits(units),
    failures: publishedFailures(failures),
  });
  const told = published.map((run) => run.told);
  // A document of nothing but errors would only stand in the next run's way.
  const isEmpty = capturesOfUnits(told).length + told.flatMap(({ energy }) => energy).length === 0;
  const { sheets, unwritten } = isEmpty
    ? { sheets: new Map<string, string>(), unwritten: [] }
    : await writeResults(document, told, { out, formats, force, png, card });
  print(document, flags, [...failures, ...unwritten], sheets);
  process.exitCode =
    document.failures.length + unwritten.length > 0
      ? exitCodes.usage
      : today.every(({ claims }) => claims.every(({ outcome }) => /pass$/.test(outcome)))
        ? exitCodes.ok
        : exitCodes.claim;
  const results = published.flatMap(({ measured: { sweep, steps, transfers } }) =>
    [...sweep, ...steps, ...transfers].map(({ result }) => worded(result)),
  );
  await finishRun(results, { out, formats, force });
}

function print(
  document: BenchDocument,
  flags: BenchFlags,
  failures: readonly FailedResult[],
  sheets: Sheets,
): void {
  for (const failure of failures) process.stderr.write(`${failureLine(failure)}\n`);
  if (flags.json) {
    process.stdout.write(`${jsonText(document, 2)}\n`);
    return;
  }
  const width = Math.min(100, process.stdout.columns ?? 80);
  const blocks = [
    ...document.units
      .filter(({ earlier }) => earlier === undefined)
      .map((unit) => benchLines(unit, { width, ...sheetOf(unit.name, sheets) })),
    comparisonLines(document),
  ].filter((lines) => lines.length > 0);
  process.stdout.write(`${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`);
}

type Sheets = ReadonlyMap<string, string>;

function sheetOf(name: string, sheets: Sheets): { readonly sheetPath?: string } {
  const sheetPath = sheets.get(name);
  return sheetPath === undefined ? {} : { sheetPath };
}

interface ResultOptions {
  readonly out: string;
  readonly formats: Formats;
  readonly force: boolean;
  readonly png: boolean;
  /** Null: none. */
  readonly card: CardTheme | null;
}

/** @returns the sweeps' sheets, and what could not be written: what was measured still stands. */
async function writeResults(
  document: BenchDocument,
  told: BenchSheetOptions['told'],
  { out, formats, force, png, card }: ResultOptions,
): Promise<{ readonly sheets: Sheets; readonly unwritten: readonly FailedResult[] }> {
  const isOwn = ownBenchOutput(capturesOfUnits(told).map(({ sha256 }) => sha256));
  const write = async (name: string, content: string | Uint8Array): Promise<string> => {
    const path = join(out, name);
    await writeOutput(path, content, { isOwn, force });
    return path;
  };
  try {
    await makeFolder(out);
    await write('bench.json', `${jsonText({ ...document, seal: unsealed }, 2)}\n`);
    return { sheets: await writeBenchSheets(document, { told, formats, png, card, write }), unwritten: [] };
  } catch (error) {
    if (!(error instanceof MeasureError)) throw error;
    return { sheets: new Map(), unwritten: [failedResult(join(out, 'bench.json'), error)] };
  }
}

/** Runs whose captures are named as in what is published: without folders, two of one name told apart. */
function publishedRuns(runs: readonly UnitRun[]): readonly UnitRun[] {
  const name = publishedNames(capturesOfUnits(runs.map(({ told }) => told)));
  const renamed = <T extends { readonly file: string; readonly sha256: string }>(
    items: readonly T[],
  ): readonly T[] => items.map((item) => ({ ...item, file: name(item) }));
  const measuredAs = <T extends { readonly result: AssayResult }>(items: readonly T[]): readonly T[] =>
    items.map((item) => ({ ...item, result: { ...item.result, file: name(item.result) } }));
  return runs.map(({ measured, told, ...run }) => ({
    ...run,
    measured: {
      ...measured,
      sweep: measuredAs(measured.sweep).map((capture) =>
        capture.sheet === undefined ? capture : { ...capture, sheet: basename(capture.sheet) },
      ),
      steps: measuredAs(measured.steps),
      transfers: measuredAs(measured.transfers),
    },
    told: {
      ...told,
      sweep: renamed(told.sweep),
      steps: renamed(told.steps),
      transfers: renamed(told.transfers),
    },
  }));
}

/** Failures as bench.json holds them; on the terminal each has its whole path. */
function publishedFailures(failures: readonly FailedResult[]): readonly FailedResult[] {
  return failures.map((failed) => ({ ...failed, file: basename(failed.file) }));
}
