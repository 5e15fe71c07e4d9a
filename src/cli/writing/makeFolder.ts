import { mkdir } from 'node:fs/promises';
import { unwritable } from './unwritable.ts';

/** Makes a folder and those above it, where they are missing. @throws MeasureError `file.unwritable`. */
export async function makeFolder(path: string): Promise<void> {
  await mkdir(path, { recursive: true }).catch((error: unknown) => {
    throw unwritable(path, error);
  });
}
