import { randomUUID } from 'node:crypto';
import { rmSync } from 'node:fs';
import { mkdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { MeasureError, wordedError } from '../../entry/grammar.ts';
import { unwritable } from '../failures.ts';
import { oddKind } from '../reading/readText.ts';
import { type OwnTest, sealedText } from './ownOutput.ts';

interface OutputOptions {
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
    throw wordedError('file.exists', `${path} is there already, and is not ${own}.`, {
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
      throw wordedError('file.notRegular', `${path} is ${oddKind(stats)}, and no file.`, {
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

/** Makes a folder and those above it, where they are missing. @throws MeasureError `file.unwritable`. */
export async function makeFolder(path: string): Promise<void> {
  await mkdir(path, { recursive: true }).catch((error: unknown) => {
    throw unwritable(path, error);
  });
}

/** What ends a process from outside: Ctrl-C, a closed terminal, an order to end. */
const SIGNALS = ['SIGINT', 'SIGHUP', 'SIGTERM'] as const;

/**
 * Does some work on a file that a signal must not leave behind: it is removed, and the process ends as it would have.
 *
 * @param part - need not be there yet.
 * @public a test runs it in a process of its own.
 */
export async function removedOnSignal<T>(part: string, work: () => Promise<T>): Promise<T> {
  const end = (signal: NodeJS.Signals): void => {
    rmSync(part, { force: true });
    stopListening();
    process.kill(process.pid, signal);
  };
  const stopListening = (): void => {
    for (const signal of SIGNALS) process.removeListener(signal, end);
  };
  for (const signal of SIGNALS) process.on(signal, end);
  try {
    return await work();
  } finally {
    stopListening();
  }
}
