import { dirname } from 'node:path';
import { type BenchPlan, planOf, readPlan } from '../../entry/plans.ts';
import { readText } from '../reading/readText.ts';

/** What may be said of the one unit whose captures stand on the command line. */
export interface SweepFlags {
  readonly claim?: readonly string[];
  readonly label?: string;
  readonly nominal?: string;
  readonly voltage?: string;
  readonly current?: string;
  readonly scale?: number;
  readonly instrument?: string;
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
