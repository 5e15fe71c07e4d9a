import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll } from 'vitest';

/**
 * A folder with these files, for the tests of one file; it goes when they are done.
 *
 * @param files - by path within the folder; null: an empty folder of that name.
 */
export function benchFolder(files: Readonly<Record<string, Uint8Array | string | null>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  for (const [name, content] of Object.entries(files)) {
    const path = join(folder, name);
    mkdirSync(content === null ? path : dirname(path), { recursive: true });
    if (content !== null) writeFileSync(path, content);
  }
  afterAll(() => rmSync(folder, { recursive: true }));
  return folder;
}
