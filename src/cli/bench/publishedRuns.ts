import { basename } from 'node:path';
import { capturesOfUnits, publishedNames } from '../../entry/evidence.ts';
import type { FailedResult, MeasureResult } from '../../entry/measuring.ts';
import type { UnitRun } from './measureUnit.ts';

/** Runs whose captures are named as in what is published: without folders, two of one name told apart. */
export function publishedRuns(runs: readonly UnitRun[]): readonly UnitRun[] {
  const name = publishedNames(capturesOfUnits(runs.map(({ told }) => told)));
  const renamed = <T extends { readonly file: string; readonly sha256: string }>(
    items: readonly T[],
  ): readonly T[] => items.map((item) => ({ ...item, file: name(item) }));
  const measuredAs = <T extends { readonly result: MeasureResult }>(items: readonly T[]): readonly T[] =>
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
export function publishedFailures(failures: readonly FailedResult[]): readonly FailedResult[] {
  return failures.map((failed) => ({ ...failed, file: basename(failed.file) }));
}
