import { readFile } from 'node:fs/promises';
import { MeasureError } from '../../entry/grammar.ts';
import type { OwnTest } from './ownOutput.ts';
import { unwritable } from './unwritable.ts';
import { writeWhole } from './writeWhole.ts';

export interface OutputOptions {
  /** Whether a file that is there may be replaced. */
  readonly isOwn: OwnTest;
  /** What such a file would be. Default `an earlier result of the same capture`. */
  readonly own?: string;
  /** Replace it whatever it is. */
  readonly force: boolean;
}

/**
 * Writes a file of results, whole or not at all, and never over what somebody else put there.
 *
 * @param path - its folder must be there.
 * @throws MeasureError `file.exists` where another file stands there; `file.unwritable`.
 */
export async function writeOutput(
  path: string,
  content: string | Uint8Array,
  { isOwn, own = 'an earlier result of the same capture', force }: OutputOptions,
): Promise<void> {
  if (!force) {
    const there = await fileThere(path);
    if (there !== null && !isOwn(there)) {
      throw new MeasureError('file.exists', `${path} is there already, and is not ${own}.`, {
        expected: `a free name, or ${own}`,
        advice: 'Name another place with --out, or replace the file with --force',
      });
    }
  }
  await writeWhole(path, content);
}

async function fileThere(path: string): Promise<Buffer | null> {
  try {
    return await readFile(path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw unwritable(path, error);
  }
}
