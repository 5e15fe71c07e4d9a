import { readFile, stat } from 'node:fs/promises';
import { MeasureError } from '../../entry/grammar.ts';
import { oddKind } from '../reading/regularFile.ts';
import type { OwnTest } from './ownOutput.ts';
import { sealedText } from './seal.ts';
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

/** No output of this program is larger. */
const MOST_BYTES = 256 * 2 ** 20;

/**
 * Writes a file of results, whole or not at all, and never over what somebody else put there. A text is sealed on its
 * way, so that a later run knows it for its own.
 *
 * @param path - its folder must be there.
 * @throws MeasureError `file.exists` where another file stands there, `file.notRegular` where a device or pipe does,
 * which not even force replaces; `file.unwritable`.
 */
export async function writeOutput(
  path: string,
  content: string | Uint8Array,
  { isOwn, own = 'an earlier result of the same capture', force }: OutputOptions,
): Promise<void> {
  const there = await fileThere(path, force);
  if (there !== null && !isOwn(there)) {
    throw new MeasureError('file.exists', `${path} is there already, and is not ${own}.`, {
      expected: `a free name, or ${own} as it was written`,
      advice: 'Name another place with --out, or replace the file with --force',
    });
  }
  await writeWhole(path, typeof content === 'string' ? sealedText(path, content) : content);
}

/** @returns null where nothing stands there, or nothing that need be looked into. */
async function fileThere(path: string, force: boolean): Promise<Buffer | null> {
  try {
    const stats = await stat(path);
    if (!stats.isFile() && !stats.isDirectory()) {
      throw new MeasureError('file.notRegular', `${path} is ${oddKind(stats)}, and no file.`, {
        expected: 'a free name, or a file',
        received: oddKind(stats),
        advice: 'Name another place with --out',
      });
    }
    if (force) return null;
    return stats.size > MOST_BYTES ? Buffer.alloc(0) : await readFile(path);
  } catch (error) {
    if (error instanceof MeasureError) throw error;
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw unwritable(path, error);
  }
}
