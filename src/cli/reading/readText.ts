import { createHash } from 'node:crypto';
import type { Stats } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import { type MeasureError, wordedError } from '../../entry/grammar.ts';
import { unreadable } from '../failures.ts';

/**
 * What the system knows of a file, before it is opened: a pipe would be waited for, and a device may never end.
 *
 * @throws MeasureError `file.unreadable` where it is not there or a folder, `file.notRegular` where it is neither.
 */
export async function regularFile(path: string): Promise<Stats> {
  const stats = await stat(path).catch((error: unknown) => {
    throw unreadable(error);
  });
  if (stats.isDirectory()) throw unreadable('a folder of that name');
  if (!stats.isFile()) throw notRegular(stats);
  return stats;
}

function notRegular(stats: Stats): MeasureError {
  const what = oddKind(stats);
  return wordedError('file.notRegular', `This is ${what}, and no file.`, {
    expected: 'a file on a disk',
    received: what,
    advice: 'Save what it gives into a file, and name that',
  });
}

/** What stands under a name where no file and no folder does. */
export function oddKind(stats: Stats): string {
  if (stats.isFIFO()) return 'a pipe';
  if (stats.isSocket()) return 'a socket';
  return 'a device';
}

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
    throw wordedError('file.tooLarge', 'The file is too large to be a plan, a sheet or a result.', {
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

/** SHA-256 of a text's UTF-8 bytes, or of bytes, lower-case hexadecimal. */
export function digest(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}
