import { type AssayOptions, type FailedResult, MeasureError } from '../../entry/measuring.ts';
import { type BenchPlan, readInstrument } from '../../entry/plans.ts';
import { failedResult } from '../measureFile.ts';
import { readText } from '../reading/readText.ts';
import { pathFrom } from './pathFrom.ts';

export interface InstrumentFiles {
  /** By path as in the plan; one that can't be read is missing here. */
  readonly instruments: ReadonlyMap<string, NonNullable<AssayOptions['instrument']>>;
  readonly failures: readonly FailedResult[];
}

/** The instrument files that a plan names, each read once. */
export async function instrumentFiles({ units }: BenchPlan, folder: string): Promise<InstrumentFiles> {
  const named = units.flatMap(({ captures, steps, transfers }) =>
    [...captures, ...steps, ...transfers].flatMap(({ options: { instrument } }) =>
      typeof instrument === 'string' ? [instrument] : [],
    ),
  );
  const instruments = new Map<string, NonNullable<AssayOptions['instrument']>>();
  const failures: FailedResult[] = [];
  for (const file of new Set(named)) {
    const path = pathFrom(folder, file);
    try {
      instruments.set(file, readInstrument(await readText(path)));
    } catch (error) {
      if (!(error instanceof MeasureError)) throw error;
      failures.push(failedResult(path, error));
    }
  }
  return { instruments, failures };
}
