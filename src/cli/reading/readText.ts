import { readFile } from 'node:fs/promises';
import { MeasureError } from '../../entry/grammar.ts';
import { unreadable } from '../unreadable.ts';
import { regularFile } from './regularFile.ts';

/** More than any file of words or results has, less than what fills the memory. */
const MOST_BYTES = 128 * 2 ** 20;

/**
 * The bytes of a file of text, such as a plan or a sheet.
 *
 * @throws MeasureError `file.unreadable`, `file.notRegular`, `file.tooLarge`.
 */
export async function readBytes(path: string): Promise<Buffer> {
  const { size } = await regularFile(path);
  if (size > MOST_BYTES) {
    throw new MeasureError('file.tooLarge', 'The file is too large to be a plan, a sheet or a result.', {
      expected: `at most ${Math.floor(MOST_BYTES / 1e6)} MB`,
      received: `${Math.ceil(size / 1e6)} MB`,
    });
  }
  return await readFile(path).catch((error: unknown) => {
    throw unreadable(error);
  });
}

/** The same as text. */
export async function readText(path: string): Promise<string> {
  return (await readBytes(path)).toString('utf8');
}
