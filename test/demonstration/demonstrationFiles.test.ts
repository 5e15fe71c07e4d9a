import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { demonstrationFiles } from './demonstrationFiles.ts';

const folder = new URL('../../captures/', import.meta.url);

test('the folder of demonstration captures holds what the generator makes, byte for byte', () => {
  const made = demonstrationFiles();
  expect(readdirSync(folder).sort()).toEqual([...made.keys()].sort());
  for (const [name, bytes] of made) {
    expect(Buffer.compare(readFileSync(new URL(name, folder)), bytes), name).toBe(0);
  }
});

test('every demonstration capture is of handy size and says that it is invented', () => {
  for (const [name, bytes] of demonstrationFiles()) {
    expect(bytes.length, name).toBeLessThan(1_000_000);
    const text = Buffer.from(bytes).toString(bytes[0] === 0xff ? 'utf16le' : 'utf8');
    expect(text.slice(0, 200), name).toContain('nvented');
  }
});
