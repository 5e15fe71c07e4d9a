import { dirname, isAbsolute, join } from 'node:path';
import { type BenchUnit, readEarlier } from '../../entry/benching.ts';
import { publishedNames, publishedUnit } from '../../entry/evidence.ts';
import { type AssayOptions, type FailedResult, MeasureError } from '../../entry/measuring.ts';
import { type BenchPlan, planOf, readInstrument, readPlan } from '../../entry/plans.ts';
import { failedResult } from '../measureFile.ts';
import { digest, readText } from '../reading/readText.ts';

/** What may be said of the one unit whose captures stand on the command line: that, and the keys of a plan. */
export interface SweepFlags extends Readonly<Record<string, unknown>> {
  readonly claim?: readonly string[];
  readonly label?: string;
  readonly rule?: string;
  readonly earlier?: readonly string[];
}

/** A plan and the folder that its paths start from. */
export interface NamedPlan {
  readonly plan: BenchPlan;
  readonly folder: string;
}

/**
 * The plan in a file.
 *
 * @throws MeasureError as `readPlan` does, or where the file can't be read.
 */
export async function planInFile(file: string): Promise<NamedPlan> {
  return { plan: readPlan(await readText(file)), folder: dirname(file) };
}

/**
 * A plan of one unit from pairs such as `300W=b.csv`.
 *
 * @throws MeasureError as `planOf` does.
 */
export function planOfPairs(pairs: readonly string[], flags: SweepFlags): NamedPlan {
  const { claim, label = 'The unit under test', earlier, rule, ...options } = flags;
  const captures = pairs.map((pair) => {
    const at = pair.indexOf('=');
    return { load: pair.slice(0, at), file: pair.slice(at + 1) };
  });
  const unit = { name: 'unit', label, claims: claim ?? null, captures };
  return {
    plan: planOf({ ...options, rule, earlier, units: [unit] }),
    folder: '',
  };
}

/** Where a path that stands in a plan leads, seen from where the command was called. */
export function pathFrom(folder: string, path: string): string {
  return isAbsolute(path) ? path : join(folder, path);
}

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

/** The units of earlier documents; a document that can't be read is a failure beside the others. */
export async function earlierUnits(
  files: readonly string[],
  folder: string,
): Promise<{ readonly units: readonly BenchUnit[]; readonly failures: readonly FailedResult[] }> {
  const failures: FailedResult[] = [];
  const fail = (path: string, error: unknown): readonly [] => {
    if (!(error instanceof MeasureError)) throw error;
    failures.push(failedResult(path, error));
    return [];
  };
  const read = [];
  for (const file of files) {
    const path = pathFrom(folder, file);
    try {
      const text = await readText(path);
      read.push({ file: path, text, sha256: digest(text) });
    } catch (error) {
      fail(path, error);
    }
  }
  const name = publishedNames(read);
  const units = read.flatMap((document) => {
    try {
      return readEarlier(document.text, name(document)).map(publishedUnit);
    } catch (error) {
      return fail(document.file, error);
    }
  });
  return { units, failures };
}
