import type { Dirent } from 'node:fs';
import { readdir, realpath, stat } from 'node:fs/promises';
import { join, resolve, sep } from 'node:path';
import { type MeasureError, wordedError } from '../entry/grammar.ts';
import { systemReason, unreadable } from './failures.ts';

/** A file to read, or why an argument names none. */
export type Found = { readonly file: string; readonly error?: MeasureError };

/** Endings under which scopes and loggers save text. A file that is named outright may have any. */
const ENDINGS = /\.(?:csv|tsv|txt|tab|dat|asc)$/i;

/**
 * The captures that arguments name: files, folders (all captures under them) and patterns, in the order given,
 * each once. Patterns are expanded here, since some shells don't.
 *
 * @param mostEntries - files and folders that are looked at below a folder.
 * @returns never empty for a non-empty list; an argument that names nothing comes back with its error, and so does a
 * folder below one that can't be looked into.
 */
export async function findCaptures(
  named: readonly string[],
  mostEntries: number = MOST_ENTRIES,
): Promise<readonly Found[]> {
  const found = (await Promise.all(named.map((one) => findOne(one, mostEntries)))).flat();
  const seen = new Set<string>();
  return found.filter(({ file }) => {
    const path = resolve(file);
    if (seen.has(path)) return false;
    seen.add(path);
    return true;
  });
}

async function findOne(named: string, mostEntries: number): Promise<readonly Found[]> {
  const stats = await stat(named).catch((error: NodeJS.ErrnoException) => error);
  if (!(stats instanceof Error))
    return stats.isDirectory() ? inFolder(named, mostEntries) : [{ file: named }];
  // Loaded only where something is looked for.
  const { glob, isDynamicPattern } = await import('tinyglobby');
  if (isDynamicPattern(named)) {
    const pattern = named.replaceAll('\\', '/');
    const found = pattern.includes('**')
      ? await inFoldersOf(pattern, mostEntries)
      : (await eachOnce(await glob(pattern))).map((file) => ({ file }));
    if (found.length > 0) return found;
    return [
      missing(
        named,
        'pattern.empty',
        'No file matches this pattern.',
        'a pattern such as captures/*.csv',
        'Check the folder and the spelling',
      ),
    ];
  }
  if (!['ENOENT', 'ENOTDIR'].includes(stats.code ?? '')) return [{ file: named, error: unreadable(stats) }];
  return [
    missing(
      named,
      'file.missing',
      'There is no such file or folder.',
      'a capture that exists',
      'Check the path and the spelling',
    ),
  ];
}

async function inFolder(named: string, mostEntries: number): Promise<readonly Found[]> {
  const { files, closed, isTooLarge } = await walkFolder(named, ENDINGS, mostEntries);
  const captures = inOrder(files).map((file) => ({ file: join(named, file) }));
  const errors: Found[] = closed.map(({ folder, error }) => ({
    file: join(named, folder),
    error: unlisted(error),
  }));
  if (isTooLarge) errors.push({ file: named, error: crowded(mostEntries) });
  if (captures.length + errors.length > 0) return [...captures, ...errors];
  return [
    missing(
      named,
      'folder.empty',
      'There is no capture in this folder.',
      'captures ending in .csv, .txt, .tsv, .tab, .dat or .asc',
      'Name the folder that the scope saved into, or the file itself',
    ),
  ];
}

/** What a pattern of folders within folders names: as far as a folder is looked through, for a link may lead anywhere. */
async function inFoldersOf(pattern: string, mostEntries: number): Promise<readonly Found[]> {
  const { default: picomatch } = await import('picomatch');
  const { base } = picomatch.scan(pattern);
  const isNamed = picomatch(pattern);
  const { files, closed, isTooLarge } = await walkFolder(base === '' ? '.' : base, /^/, mostEntries);
  const inside = (file: string): string => join(base, file).replaceAll('\\', '/');
  const named = inOrder(files.map(inside).filter((file) => isNamed(file)));
  const errors: Found[] = closed.map(({ folder, error }) => ({
    file: inside(folder),
    error: unlisted(error),
  }));
  if (isTooLarge) errors.push({ file: pattern, error: crowded(mostEntries) });
  return [...named.map((file) => ({ file })), ...errors];
}

/** Each file once, under the shortest of the names that links give it. */
async function eachOnce(files: readonly string[]): Promise<readonly string[]> {
  const shortest = new Map<string, string>();
  for (const file of files) {
    const place = await realpath(file).catch(() => resolve(file));
    const known = shortest.get(place);
    if (known === undefined || file.length < known.length) shortest.set(place, file);
  }
  return inOrder([...shortest.values()]);
}

function unlisted(error: unknown): MeasureError {
  return wordedError('folder.unreadable', 'The folder could not be looked into.', {
    expected: 'a folder that you may read',
    received: systemReason(error),
    advice: 'Ask for the right to read it, or name the files themselves',
  });
}

function crowded(mostEntries: number): MeasureError {
  return wordedError('folder.tooLarge', 'The folder holds more than can be looked through.', {
    expected: `at most ${mostEntries} files and folders below it`,
    received: 'more; those beyond were not looked at',
    advice: 'Name the folder that the scope saved into, or the files themselves',
  });
}

function missing(file: string, code: string, message: string, expected: string, advice: string): Found {
  return { file, error: wordedError(code, message, { expected, advice }) };
}

/** 2 before 10, whatever the machine's language. */
function inOrder(files: readonly string[]): string[] {
  return [...files].sort(new Intl.Collator('en', { numeric: true }).compare);
}

interface WalkedFolder {
  /** Paths within the folder. */
  readonly files: readonly string[];
  /** Folders that could not be looked into. */
  readonly closed: readonly { readonly folder: string; readonly error: unknown }[];
  /** True where it holds so much that not all of it was looked at. */
  readonly isTooLarge: boolean;
}

/** Files and folders that are looked at below one, a second's work: no evening of captures has a thousandth of it. */
const MOST_ENTRIES = 100_000;

/**
 * The regular files under a folder whose names fit, each once: a file or folder that several links lead to counts
 * under the first of its names, one's own name before a link's, so that links in a circle end. A link to a folder that
 * holds this one leads to no more of it, and one to another disk may lead to all of the machine: neither is followed, and the
 * latter is said. Pipes and devices are no files; what begins with a dot is
 * hidden.
 */
async function walkFolder(top: string, names: RegExp, mostEntries: number): Promise<WalkedFolder> {
  const files: string[] = [];
  const closed: { folder: string; error: unknown }[] = [];
  const seen = new Set<string>();
  const isNew = async (path: string): Promise<boolean> => {
    const place = await realpath(path);
    if (seen.has(place)) return false;
    seen.add(place);
    return true;
  };
  const links: string[] = [];
  let entriesSeen = 0;
  const look = async (folder: string): Promise<void> => {
    const path = join(top, folder);
    let entries: readonly Dirent[];
    try {
      if (!(await isNew(path))) return;
      entries = await readdir(path, { withFileTypes: true });
    } catch (error) {
      closed.push({ folder, error });
      return;
    }
    for (const entry of entries) {
      if (++entriesSeen > mostEntries) return;
      const inside = join(folder, entry.name);
      if (entry.name.startsWith('.')) continue;
      if (entry.isDirectory()) await look(inside);
      else if (entry.isFile() && names.test(entry.name) && (await isNew(join(top, inside))))
        files.push(inside);
      else if (entry.isSymbolicLink()) links.push(inside);
    }
  };
  await look('');
  const topDevice = (await stat(top).catch(() => null))?.dev;
  const topPlace = await realpath(top).catch(() => resolve(top));
  // Grows while folders behind links are looked into.
  for (const link of links) {
    const path = join(top, link);
    const stats = await stat(path).catch(() => null);
    if (stats?.isDirectory()) {
      const place = await realpath(path).catch(() => '');
      if (isWithin(topPlace, place)) continue;
      if (stats.dev === topDevice) await look(link);
      else if (await isNew(path).catch(() => false))
        closed.push({ folder: link, error: 'a link to another disk' });
    } else if (stats?.isFile() && names.test(link) && (await isNew(path))) files.push(link);
  }
  return { files, closed, isTooLarge: entriesSeen > mostEntries };
}

/** Whether a place is a folder or stands somewhere below it. */
function isWithin(place: string, folder: string): boolean {
  return (
    folder !== '' && (place === folder || place.startsWith(folder.endsWith(sep) ? folder : folder + sep))
  );
}
