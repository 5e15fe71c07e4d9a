import type { MeasuredUnit, ToldTransfer } from '../../entry/benching.ts';
import {
  type CarriedCapture,
  type CarriedUnit,
  carryOptions,
  publishedOptions,
} from '../../entry/evidence.ts';
import { type Assay, type FailedResult, MeasureError } from '../../entry/measuring.ts';
import type { BenchPlan } from '../../entry/plans.ts';
import { type FileOutcome, failedResult, type MeasureFileOptions } from '../measureFile.ts';
import type { WriteSheet } from '../report/sheetWriter.ts';
import type { PlannedTask, UnitTasks } from './unitTasks.ts';

export interface UnitRun {
  readonly measured: MeasuredUnit;
  /** What was told of it, with the captures that could be measured. */
  readonly told: CarriedUnit;
  readonly failures: readonly FailedResult[];
}

export interface UnitRunOptions {
  readonly rule: BenchPlan['rule'];
  /** Of the unit's tasks, in their order; others may follow. */
  readonly outcomes: AsyncIterator<FileOutcome, unknown, undefined>;
  /** Writes the sheet of one capture and says where; absent: none is wanted. */
  readonly writeSheet?: WriteSheet;
  /** The same for captures of a step or a transfer; absent: as `writeSheet`. */
  readonly writeChange?: WriteSheet;
}

type MeasuredOne = { readonly assay: Assay; readonly sheet?: string; readonly carried: CarriedCapture };

/** Takes the outcomes of a unit's captures; one that can't be read is a failure beside the others. */
export async function measureUnit(tasks: UnitTasks, run: UnitRunOptions): Promise<UnitRun> {
  const { name, label, claims, energy } = tasks.unit;
  const { rule, outcomes, writeSheet, writeChange = writeSheet } = run;
  const failures: FailedResult[] = [];

  /** Those that could be measured, each with what was planned of it. */
  const measureAll = async <T>(
    planned: readonly PlannedTask<T>[],
    write: WriteSheet | undefined,
  ): Promise<readonly { readonly capture: T; readonly done: MeasuredOne }[]> => {
    const measured = [];
    for (const { capture, task } of planned) {
      const { value: outcome, done: ended } = await outcomes.next();
      if (ended) throw new Error('fewer outcomes than captures');
      if ('failed' in outcome) {
        failures.push(outcome.failed);
        continue;
      }
      const assay = outcome.assays[0]!;
      const sheet = await written(write, assay, outcome.options);
      const { file } = task.found;
      const carried = {
        file,
        sha256: assay.result.sha256,
        options: publishedOptions(carryOptions(outcome.options), assay.result),
      };
      measured.push({ capture, done: { assay, carried, ...(sheet === undefined ? {} : { sheet }) } });
    }
    return measured;
  };

  /** Where the sheet was written; undefined where none is wanted, or it could not be: the result still stands. */
  const written = async (
    write: WriteSheet | undefined,
    assay: Assay,
    options: MeasureFileOptions,
  ): Promise<string | undefined> => {
    try {
      return await write?.(assay, options);
    } catch (error) {
      if (!(error instanceof MeasureError)) throw error;
      failures.push(failedResult(assay.result.file, error));
      return undefined;
    }
  };

  const sweep = await measureAll(tasks.sweep, writeSheet);
  const steps = await measureAll(tasks.steps, writeChange);
  const transfers = await measureAll(tasks.transfers, writeChange);
  const measured = {
    ...{ name, label, claims, rule, energy },
    sweep: sweep.map(({ capture: { told }, done: { assay, sheet } }) => ({
      ...{ result: assay.result, budgets: assay.budgets, told },
      ...(sheet === undefined ? {} : { sheet }),
    })),
    steps: steps.map(({ capture: { told }, done }) => ({ result: done.assay.result, told })),
    transfers: transfers.map(({ capture, done }) => ({
      result: done.assay.result,
      ...toldTransfer(capture),
    })),
  };
  const told = {
    ...{ name, label, rule, energy },
    claims: claims.map(({ text }) => text),
    sweep: sweep.map(({ capture, done }) => ({ ...done.carried, told: capture.told })),
    steps: steps.map(({ capture, done }) => ({ ...done.carried, told: capture.told })),
    transfers: transfers.map(({ capture, done }) => ({ ...done.carried, ...toldTransfer(capture) })),
  };
  return { measured, told, failures };
}

function toldTransfer({ note, direction }: ToldTransfer): ToldTransfer {
  return { ...(note === undefined ? {} : { note }), ...(direction === undefined ? {} : { direction }) };
}
