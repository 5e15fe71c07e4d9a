import { stat } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import { MeasureError } from '../../entry/grammar.ts';
import { planText } from '../../entry/plans.ts';
import { findCaptures } from '../findCaptures.ts';
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
  const files = found.map(({ file }) => relative(folder, file).split(sep).join('/'));
  await writeWhole(path, planText(files));
  return { path, count: files.length };
}
