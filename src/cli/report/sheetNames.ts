import { basename, dirname, extname, resolve } from 'node:path';

/**
 * A name for the sheet of each capture, none of them twice: the capture's own name; with as many parent
 * folders and, at last, its ending in front where captures share a name, as scopes that save every time into
 * a new folder make them do.
 *
 * @param files - paths, each once.
 * @returns file to name, without an ending; letters, digits and -_. only, whatever the capture was called.
 */
export function sheetNames(files: readonly string[]): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (const file of files) {
    const candidates = [...namesOf(file)];
    const unique = candidates.find((name) =>
      files.every((other) => other === file || ![...namesOf(other)].some((taken) => sameFile(taken, name))),
    );
    names.set(file, unique ?? `${candidates.at(-1)}-${files.indexOf(file) + 1}`);
  }
  return names;
}

/** From the shortest name to the longest that a file can bear. */
function* namesOf(file: string): Generator<string> {
  let parent = dirname(resolve(file));
  let name = safe(basename(file, extname(file)));
  yield name;
  for (let depth = 0; depth < 3 && basename(parent) !== ''; depth++) {
    name = `${safe(basename(parent))}-${name}`;
    yield name;
    parent = dirname(parent);
  }
  yield `${name}-${safe(extname(file).slice(1))}`;
}

/** Some file systems don't tell upper case from lower. */
function sameFile(a: string, b: string): boolean {
  return a.toLowerCase() === b.toLowerCase();
}

function safe(name: string): string {
  const kept = name.replaceAll(/[^\p{L}\p{N}_.-]+/gu, '_').replace(/^\.+/, '');
  return kept === '' ? 'capture' : kept.slice(0, 100);
}
