import { stat } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import { MeasureError } from '../../entry/grammar.ts';
import { type LookedInto, lookedInto, planText } from '../../entry/plans.ts';
import { findCaptures } from '../findCaptures.ts';
import { measureFiles } from '../measureFiles.ts';
import { progressLine } from '../progress/progressLine.ts';
import { writeWhole } from '../writing/writeWhole.ts';

/**
 * Writes plan.yaml into a folder, filled with the captures found there.
 *
 * @param force - write over a plan that is there.
 * @returns the plan's path and how many captures it names.
 * @throws MeasureError `plan.exists`; where the folder holds no capture; where it can't be written.
 */
export async function writePlan(
  folder: string,
  force: boolean,
): Promise<{ readonly path: string; readonly count: number }> {
  const path = join(folder, 'plan.yaml');
  const found = await findCaptures([folder]);
  for (const { error } of found) if (error !== undefined) throw error;
  if (!force && (await stat(path).catch(() => null)) !== null) {
    throw new MeasureError('plan.exists', 'There is a plan in this folder already.', {
      expected: 'a folder without plan.yaml',
      advice: '--force writes over it; what was filled in is lost then',
    });
  }
  const nameOf = (file: string): string => relative(folder, file).split(sep).join('/');
  const files = found.map(({ file }) => nameOf(file));
  const looked = new Map<string, LookedInto>();
  const progress = progressLine(found.length, {});
  // What can't be read is named in the plan all the same: bench says what is wrong with it.
  for await (const outcome of measureFiles(
    found.map((one) => ({ found: one, options: {} })),
    progress,
  )) {
    if ('failed' in outcome) continue;
    const { result } = outcome.assays[0]!;
    looked.set(nameOf(result.file), lookedInto(result));
  }
  progress.clear();
  await writeWhole(path, planText(files, looked));
  return { path, count: files.length };
}
