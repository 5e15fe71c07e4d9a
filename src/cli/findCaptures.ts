import { stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { MeasureError } from '../entry/grammar.ts';

/** A file to read, or why an argument names none. */
export type Found = { readonly file: string; readonly error?: MeasureError };

/** Endings under which scopes and loggers save text. A file that is named outright may have any. */
const ENDINGS = '**/*.{csv,tsv,txt,tab,dat,asc}';

/**
 * The captures that arguments name: files, folders (all captures under them) and patterns, in the order given,
 * each once. Patterns are expanded here, since some shells don't.
 *
 * @returns never empty for a non-empty list; an argument that names nothing comes back with its error.
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
  const stats = await stat(named).catch(() => null);
  if (stats !== null && !stats.isDirectory()) return [{ file: named }];
  // Loaded only where something is looked for.
  const { glob, isDynamicPattern } = await import('tinyglobby');
  if (stats !== null) {
    const files = await glob(ENDINGS, { cwd: named, caseSensitiveMatch: false });
    if (files.length > 0) return inOrder(files).map((file) => ({ file: join(named, file) }));
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
  if (isDynamicPattern(named)) {
    const files = await glob(named.replaceAll('\\', '/'));
    if (files.length > 0) return inOrder(files).map((file) => ({ file }));
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

function missing(file: string, code: string, message: string, expected: string, advice: string): Found {
  return { file, error: new MeasureError(code, message, { expected, advice }) };
}

/** 2 before 10, whatever the machine's language. */
function inOrder(files: readonly string[]): string[] {
  return [...files].sort(new Intl.Collator('en', { numeric: true }).compare);
}
