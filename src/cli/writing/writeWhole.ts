import { randomUUID } from 'node:crypto';
import { rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { removedOnSignal } from './removedOnSignal.ts';
import { unwritable } from './unwritable.ts';

/**
 * Writes a file whole or not at all: elsewhere first, then moved into its place.
 *
 * The folder for temporary files comes first, so that a process killed half-way leaves nothing among the results.
 * It may lie on another disk, across which nothing can be moved: then a file of its own, beside the place.
 *
 * @param path - its folder must be there. A file that is there is replaced.
 * @throws MeasureError `file.unwritable`.
 */
export async function writeWhole(path: string, content: string | Uint8Array): Promise<void> {
  const name = `${basename(path)}.${randomUUID()}.part`;
  try {
    if (!(await writeAndMove(join(tmpdir(), name), path, content))) {
      await writeAndMove(join(dirname(path), `.${name}`), path, content, true);
    }
  } catch (error) {
    throw unwritable(path, error);
  }
}

/** Codes of a temporary folder that can't be used, or lies on another disk. */
const elsewhere: ReadonlySet<string | undefined> = new Set([
  'EXDEV',
  'ENOENT',
  'EACCES',
  'EPERM',
  'EROFS',
  'ENOSPC',
]);

/**
 * @param isLast - no other place is left to try: every error counts.
 * @returns false where the part could not stand there, or not be moved from there.
 */
async function writeAndMove(
  part: string,
  path: string,
  content: string | Uint8Array,
  isLast = false,
): Promise<boolean> {
  try {
    await removedOnSignal(part, async () => {
      await writeFile(part, content, { flag: 'wx' });
      await rename(part, path);
    });
    return true;
  } catch (error) {
    await rm(part, { force: true });
    if (isLast || !elsewhere.has((error as NodeJS.ErrnoException).code)) throw error;
    return false;
  }
}
