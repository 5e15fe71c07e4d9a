import type { Stats } from 'node:fs';
import { stat } from 'node:fs/promises';
import { MeasureError } from '../../entry/grammar.ts';
import { unreadable } from '../unreadable.ts';

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
  return new MeasureError('file.notRegular', `This is ${what}, and no file.`, {
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
