import { type MeasuredUnit, outletClaims } from '../../entry/benching.ts';
import { type CarriedCapture, type CarriedUnit, carryOptions } from '../../entry/evidence.ts';
import { type Assay, type AssayOptions, type FailedResult, MeasureError } from '../../entry/measuring.ts';
import type { BenchPlan, CaptureOptions, PlannedUnit } from '../../entry/plans.ts';
import { failedResult, type MeasureFileOptions, measureFile } from '../measureFile.ts';
import type { ProgressLine } from '../progress/progressLine.ts';
import type { WriteSheet } from '../report/sheetWriter.ts';
import type { InstrumentFiles } from './instrumentFiles.ts';
import { pathFrom } from './pathFrom.ts';

export interface UnitRun {
  readonly measured: MeasuredUnit;
  /** What was told of it, with the captures that could be measured. */
  readonly told: CarriedUnit;
  readonly failures: readonly FailedResult[];
}

export interface UnitRunOptions {
  /** That the paths of the plan start from. */
  readonly folder: string;
  readonly rule: BenchPlan['rule'];
  readonly instruments: InstrumentFiles['instruments'];
  /** Writes the sheet of one capture and says where; absent: none is wanted. */
  readonly writeSheet?: WriteSheet;
  readonly progress: ProgressLine;
}

type PlannedCapture = PlannedUnit['transfers'][number];
type MeasuredOne = { readonly assay: Assay; readonly sheet?: string; readonly carried: CarriedCapture };

/** Measures all captures of a unit; one that can't be read is a failure beside the others. */
export async function measureUnit(unit: PlannedUnit, run: UnitRunOptions): Promise<UnitRun> {
  const { name, label, claims, energy } = unit;
  const { rule, writeSheet } = run;
  const failures: FailedResult[] = [];
  const asked = outletClaims(claims);

  /** Those that could be measured, each with what was planned of it. */
  const measureAll = async <T extends PlannedCapture>(
    captures: readonly T[],
    toCheck: (capture: T) => Pick<AssayOptions, 'claims' | 'load'>,
  ): Promise<readonly { readonly capture: T; readonly done: MeasuredOne }[]> => {
    const measured = [];
    for (const capture of captures) {
      const options = assayOptions(capture.options, run.instruments, asked.nominal);
      if (options === null) continue;
      const file = pathFrom(run.folder, capture.file);
      run.progress.begin(file);
      const outcome = await measureFile({ file }, { ...options, label, rule, ...toCheck(capture) });
      if ('failed' in outcome) {
        failures.push(outcome.failed);
        continue;
      }
      const assay = outcome.assays[0]!;
      const sheet = await written(assay, outcome.options);
      const carried = { file, sha256: assay.result.sha256, options: carryOptions(outcome.options) };
      measured.push({ capture, done: { assay, carried, ...(sheet === undefined ? {} : { sheet }) } });
    }
    return measured;
  };

  /** Where the sheet was written; undefined where none is wanted, or it could not be: the result still stands. */
  const written = async (assay: Assay, options: MeasureFileOptions): Promise<string | undefined> => {
    try {
      return await writeSheet?.(assay, options);
    } catch (error) {
      if (!(error instanceof MeasureError)) throw error;
      failures.push(failedResult(assay.result.file, error));
      return undefined;
    }
  };

  const sweep = await measureAll(unit.captures, ({ load }) => ({
    claims: asked.sweep,
    ...(load === undefined ? {} : { load }),
  }));
  const steps = await measureAll(unit.steps, () => ({}));
  const transfers = await measureAll(unit.transfers, () => ({ claims: asked.transfers }));
  const measured = {
    ...{ name, label, claims, rule, energy },
    sweep: sweep.map(({ capture: { told }, done: { assay, sheet } }) => ({
      ...{ result: assay.result, budgets: assay.budgets, told },
      ...(sheet === undefined ? {} : { sheet }),
    })),
    steps: steps.map(({ capture: { told }, done }) => ({ result: done.assay.result, told })),
    transfers: transfers.map(({ capture, done }) => ({ result: done.assay.result, ...noteOf(capture) })),
  };
  const told = {
    ...{ name, label, rule, energy },
    claims: claims.map(({ text }) => text),
    sweep: sweep.map(({ capture, done }) => ({ ...done.carried, told: capture.told })),
    steps: steps.map(({ capture, done }) => ({ ...done.carried, told: capture.told })),
    transfers: transfers.map(({ capture, done }) => ({ ...done.carried, ...noteOf(capture) })),
  };
  return { measured, told, failures };
}

function noteOf({ note }: { readonly note?: string }): { readonly note?: string } {
  return note === undefined ? {} : { note };
}

/** What a plan says of one capture. @returns null where its instrument file could not be read. */
function assayOptions(
  { instrument, nominal, ...others }: CaptureOptions,
  instruments: UnitRunOptions['instruments'],
  claimed: NonNullable<AssayOptions['nominal']>,
): AssayOptions | null {
  const options = { ...others, nominal: { ...claimed, ...nominal } };
  if (instrument === undefined) return options;
  if (typeof instrument !== 'string') return { ...options, instrument };
  const read = instruments.get(instrument);
  return read === undefined ? null : { ...options, instrument: read };
}
