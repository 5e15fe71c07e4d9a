import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import {
  type Assay,
  type AssayOptions,
  type BenchPlan,
  type CaptureOptions,
  type FailedResult,
  type MeasuredUnit,
  MeasureError,
  outletClaims,
  type PlannedUnit,
  readInstrument,
} from '../../index.ts';
import { failedResult, measureFile, unreadable } from '../measureFile.ts';

export interface UnitRun {
  readonly measured: MeasuredUnit;
  readonly failures: readonly FailedResult[];
}

export interface UnitRunOptions {
  /** That the paths of the plan start from. */
  readonly folder: string;
  readonly rule: BenchPlan['rule'];
  /** Writes the sheet of one capture and says where; absent: none is wanted. */
  readonly writeSheet?: (assay: Assay) => Promise<string>;
}

/** Measures all captures of a unit; one that can't be read is a failure beside the others. */
export async function measureUnit(unit: PlannedUnit, run: UnitRunOptions): Promise<UnitRun> {
  const { folder, rule, writeSheet } = run;
  const failures: FailedResult[] = [];
  const asked = outletClaims(unit.claims);

  const measure = async (
    { file, options }: PlannedUnit['transfers'][number],
    more: Pick<AssayOptions, 'claims' | 'load'>,
  ): Promise<{ readonly assay: Assay; readonly sheet?: string } | null> => {
    const path = join(folder, file);
    try {
      const outcome = await measureFile(
        { file: path },
        { ...(await assayOptions(options, folder, asked.nominal)), label: unit.label, rule, ...more },
      );
      if ('failed' in outcome) {
        failures.push(outcome.failed);
        return null;
      }
      const assay = outcome.assays[0]!;
      const sheet = await writeSheet?.(assay);
      return sheet === undefined ? { assay } : { assay, sheet };
    } catch (error) {
      if (!(error instanceof MeasureError)) throw error;
      failures.push(failedResult(path, error));
      return null;
    }
  };

  const sweep: MeasuredUnit['sweep'][number][] = [];
  for (const capture of unit.captures) {
    const { load, told } = capture;
    const done = await measure(capture, { claims: asked.sweep, ...(load === undefined ? {} : { load }) });
    if (done === null) continue;
    const { result, budgets } = done.assay;
    sweep.push({ result, budgets, told, ...(done.sheet === undefined ? {} : { sheet: done.sheet }) });
  }
  const steps: MeasuredUnit['steps'][number][] = [];
  for (const capture of unit.steps) {
    const done = await measure(capture, {});
    if (done !== null) steps.push({ result: done.assay.result, told: capture.told });
  }
  const transfers: MeasuredUnit['transfers'][number][] = [];
  for (const capture of unit.transfers) {
    const done = await measure(capture, { claims: asked.transfers });
    if (done === null) continue;
    const { note } = capture;
    transfers.push({ result: done.assay.result, ...(note === undefined ? {} : { note }) });
  }
  const { name, label, claims, energy } = unit;
  return { measured: { name, label, claims, rule, sweep, steps, transfers, energy }, failures };
}

/** What a plan says of one capture, its instrument file read. @param claimed - where the plan tells no nominal. */
async function assayOptions(
  { instrument, nominal, ...others }: CaptureOptions,
  folder: string,
  claimed: NonNullable<AssayOptions['nominal']>,
): Promise<AssayOptions> {
  const options = { ...others, nominal: { ...claimed, ...nominal } };
  if (instrument === undefined) return options;
  if (typeof instrument !== 'string') return { ...options, instrument };
  const text = await readFile(join(folder, instrument), 'utf8').catch((error: unknown) => {
    throw unreadable(error);
  });
  return { ...options, instrument: readInstrument(text) };
}
