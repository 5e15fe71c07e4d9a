import { type MeasuredUnit, outletClaims } from '../../entry/benching.ts';
import { type Assay, type AssayOptions, type FailedResult, MeasureError } from '../../entry/measuring.ts';
import type { BenchPlan, CaptureOptions, PlannedUnit } from '../../entry/plans.ts';
import { failedResult, measureFile } from '../measureFile.ts';
import type { InstrumentFiles } from './instrumentFiles.ts';
import { pathFrom } from './pathFrom.ts';

export interface UnitRun {
  readonly measured: MeasuredUnit;
  readonly failures: readonly FailedResult[];
}

export interface UnitRunOptions {
  /** That the paths of the plan start from. */
  readonly folder: string;
  readonly rule: BenchPlan['rule'];
  readonly instruments: InstrumentFiles['instruments'];
  /** Writes the sheet of one capture and says where; absent: none is wanted. */
  readonly writeSheet?: (assay: Assay) => Promise<string>;
}

type PlannedCapture = PlannedUnit['transfers'][number];
type MeasuredOne = { readonly assay: Assay; readonly sheet?: string };

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
      const outcome = await measureFile({ file }, { ...options, label, rule, ...toCheck(capture) });
      if ('failed' in outcome) {
        failures.push(outcome.failed);
        continue;
      }
      const assay = outcome.assays[0]!;
      const sheet = await written(assay);
      measured.push({ capture, done: sheet === undefined ? { assay } : { assay, sheet } });
    }
    return measured;
  };

  /** Where the sheet was written; undefined where none is wanted, or it could not be: the result still stands. */
  const written = async (assay: Assay): Promise<string | undefined> => {
    try {
      return await writeSheet?.(assay);
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
    sweep: sweep.map(({ capture: { told }, done: { assay, ...sheet } }) => ({
      ...{ result: assay.result, budgets: assay.budgets, told },
      ...sheet,
    })),
    steps: steps.map(({ capture: { told }, done }) => ({ result: done.assay.result, told })),
    transfers: transfers.map(({ capture: { note }, done }) => ({
      result: done.assay.result,
      ...(note === undefined ? {} : { note }),
    })),
  };
  return { measured, failures };
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
