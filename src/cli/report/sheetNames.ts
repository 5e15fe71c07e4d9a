import { basename, extname } from 'node:path';

/**
 * What names the sheet of each capture: its own name; with the first eight digits of its digest where captures of the
 * run share one, as scopes that save every time into a new folder make them do. A folder's name is never part of it:
 * sheets are published.
 *
 * @param files - paths, each once.
 * @returns a name without an ending; letters, digits and -_. only, whatever the capture was called.
 */
export function sheetNames(files: readonly string[]): (file: string, sha256: string) => string {
  const counts = new Map<string, number>();
  for (const file of files) {
    const key = nameOf(file).toLowerCase();
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return (file, sha256) => {
    const name = nameOf(file);
    // Some file systems don't tell upper case from lower.
    return (counts.get(name.toLowerCase()) ?? 0) > 1 ? `${name}-${sha256.slice(0, 8)}` : name;
  };
}

function nameOf(file: string): string {
  const name = basename(file, extname(file))
    .replaceAll(/[^\p{L}\p{N}_.-]+/gu, '_')
    .replace(/^\.+/, '');
  return name === '' ? 'capture' : name.slice(0, 100);
}
