import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readsBothWays } from './bothWays.ts';

const demonstrations = readdirSync('captures').filter((name) => name.endsWith('.csv'));

describe('readInChunks(source, …) reads what readCapture reads', () => {
  test.each(demonstrations)('of %s', async (name) => {
    const bytes = readFileSync(`captures/${name}`);
    const isUtf16 = name === 'b-blue-600w.csv';
    for (const lengths of [
      { end: 4096, chunk: 5000 },
      { end: 1000, chunk: 65_536 },
    ]) {
      expect(await readsBothWays(bytes, {}, lengths)).toBe(!isUtf16);
    }
  });
});
