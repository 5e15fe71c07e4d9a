import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { test } from 'vitest';
import { demonstrationFiles } from './demonstrationFiles.ts';
import { readmeWithLists } from './readmeLists.ts';

// Run by `npm run demonstration`, not with the tests: it only writes. Vitest is here to run TypeScript.
test('writes the demonstration captures', () => {
  const folder = new URL('../../captures/', import.meta.url);
  mkdirSync(folder, { recursive: true });
  for (const [name, bytes] of demonstrationFiles()) {
    writeFileSync(fileURLToPath(new URL(name, folder)), bytes);
  }
});

test('writes the list of figures into the README', () => {
  writeFileSync('README.md', readmeWithLists(readFileSync('README.md', 'utf8')));
});
