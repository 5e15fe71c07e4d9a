import type { Dirent } from 'node:fs';
import { readdir, realpath, stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
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
 * @returns never empty for a non-empty list; an argument that names nothing comes back with its error, and so does a
 * folder below one that can't be looked into.
 */
export async function findCaptures(named: readonly string[]): Promise<readonly Found[]> {
  const found = (await Promise.all(named.map(findOne))).flat();
  const seen = new Set<string>();
  return found.filter(({ file }) => {
    const path = resolve(file);
    if (seen.has(path)) return false;
    seen.add(path);
    return true;
  });
}

async function findOne(named: string): Promise<readonly Found[]> {
  const stats = await stat(named).catch((error: NodeJS.ErrnoException) => error);
  if (!(stats instanceof Error)) return stats.isDirectory() ? inFolder(named) : [{ file: named }];
  // Loaded only where something is looked for.
  const { glob, isDynamicPattern } = await import('tinyglobby');
  if (isDynamicPattern(named)) {
    const files = await glob(named.replaceAll('\\', '/'));
    if (files.length > 0) return (await eachOnce(files)).map((file) => ({ file }));
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

async function inFolder(named: string): Promise<readonly Found[]> {
  const { files, closed } = await walkFolder(named, ENDINGS);
  const captures = inOrder(files).map((file) => ({ file: join(named, file) }));
  const errors = closed.map(({ folder, error }) => ({ file: join(named, folder), error: unlisted(error) }));
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
}

/**
 * The regular files under a folder whose names fit, each once: a file or folder that several links lead to counts
 * under the first of its names, one's own name before a link's, so that links in a circle end. Pipes and devices are
 * no files; what begins with a dot is hidden.
 */
async function walkFolder(top: string, names: RegExp): Promise<WalkedFolder> {
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
      const inside = join(folder, entry.name);
      if (entry.name.startsWith('.')) continue;
      if (entry.isDirectory()) await look(inside);
      else if (entry.isFile() && names.test(entry.name) && (await isNew(join(top, inside))))
        files.push(inside);
      else if (entry.isSymbolicLink()) links.push(inside);
    }
  };
  await look('');
  // Grows while folders behind links are looked into.
  for (const link of links) {
    const path = join(top, link);
    const stats = await stat(path).catch(() => null);
    if (stats?.isDirectory()) await look(link);
    else if (stats?.isFile() && names.test(link) && (await isNew(path))) files.push(link);
  }
  return { files, closed };
}
