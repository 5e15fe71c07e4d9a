import type { Dirent } from 'node:fs';
import { readdir, realpath, stat } from 'node:fs/promises';
import { join } from 'node:path';

export interface WalkedFolder {
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
export async function walkFolder(top: string, names: RegExp): Promise<WalkedFolder> {
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
