import { rename, rm, writeFile } from 'node:fs/promises';
import { unwritable } from './unwritable.ts';

/**
 * Writes a file whole or not at all: into a file of its own beside it first, then put in its place.
 *
 * @param path - its folder must be there.
 * @throws MeasureError `file.unwritable`.
 */
export async function writeWhole(path: string, content: string | Uint8Array): Promise<void> {
  const part = `${path}.${process.pid}.part`;
  try {
    await writeFile(part, content);
    await rename(part, path);
  } catch (error) {
    await rm(part, { force: true }).catch(() => {});
    throw unwritable(path, error);
  }
}
