import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { assayCapture } from '../../src/assay/assayCapture.ts';
import type * as Reading from '../../src/cli/reading/readFileCapture.ts';
import { readCapture } from '../../src/read/readCapture.ts';
import { writeCapture } from '../../src/synth/writeCapture.ts';
import { worded } from '../../src/words/worded.ts';
import { runCommand } from './runCommand.ts';

const folder = mkdtempSync(join(tmpdir(), 'sineassay-'));
const even = join(folder, 'even.csv');
const damaged = join(folder, 'damaged.csv');
const uneven = join(folder, 'uneven.csv');
/** Five million bytes and more: some chunks, and large enough for the command to read it in chunks. */
const ROWS = 150_000;
let reading: typeof Reading;

beforeAll(async () => {
  // The threads are started from the built command.
  const built = join(dirname(inject('command')), 'reading', 'readFileCapture.js');
  reading = (await import(pathToFileURL(built).href)) as typeof Reading;
  const sine = (rms: number, phase: number): Float64Array =>
    Float64Array.from(
      { length: ROWS },
      (_, i) => rms * Math.SQRT2 * Math.sin((2 * Math.PI * i) / 2000 + phase),
    );
  const bytes = writeCapture('comma', {
    channels: [
      { name: 'Outlet', unit: 'V', samples: sine(230, 0.3) },
      { name: 'Clamp', unit: 'A', samples: sine(2, 0.1) },
    ],
    startS: -0.5,
    intervalS: 1e-5,
  });
  writeFileSync(even, bytes);
  const lines = new TextDecoder().decode(bytes).split('\n');
  writeFileSync(
    damaged,
    lines
      .map((line, i) => (i === 60_000 ? '0.1,#' : line))
      .join('\n')
      .slice(0, -20),
  );
  writeFileSync(uneven, lines.filter((_, i) => i < 60_000 || i > 60_003).join('\n'));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('readFileCapture(file, …) reads what readCapture reads, whatever the number of threads', () => {
  test.each([
    ['an even record', () => even],
    ['a row that is none, and a last one cut', () => damaged],
    ['rows that are lost', () => uneven],
  ])('%s', async (_, file) => {
    const bytes = readFileSync(file());
    const whole = readCapture(bytes);
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    for (const workers of [0, 1, 3]) {
      const read = await reading.readFileCapture(file(), {}, { inChunksFrom: 0, sharedFrom: 0, workers });
      expect(read.sha256).toBe(sha256);
      expect({ ...read.capture, channels: [] }).toEqual({ ...whole, channels: [] });
      whole.channels.forEach(({ samples, ...channel }, k) => {
        const { samples: own, ...other } = read.capture.channels[k]!;
        expect(other).toEqual(channel);
        expect(samples.findIndex((sample, i) => !Object.is(sample, own[i]))).toBe(-1);
      });
    }
  });
});

test('measure --json of a large capture is what its whole text gives', async () => {
  const { code, stdout, stderr } = await runCommand(['measure', '--json', damaged], folder);
  expect([code, stderr]).toEqual([0, '']);
  const bytes = readFileSync(damaged);
  const source = { file: damaged, sha256: createHash('sha256').update(bytes).digest('hex') };
  const results = assayCapture(readCapture(bytes), source).map((assay) => worded(assay.result));
  expect(JSON.parse(stdout).results).toEqual(JSON.parse(JSON.stringify(results)));
  expect(results[0]?.notices.map((notice) => notice.code)).toEqual(
    expect.arrayContaining(['rows.cut', 'rows.malformed']),
  );
});

test('an error of a thread is the error of the file', async () => {
  const text = readFileSync(even, 'utf8').split('\n');
  const broken = join(folder, 'broken.csv');
  writeFileSync(broken, text.map((line, i) => (i % 50 === 7 ? 'x' : line)).join('\n'));
  await expect(
    reading.readFileCapture(broken, {}, { inChunksFrom: 0, sharedFrom: 0, workers: 2 }),
  ).rejects.toMatchObject({ code: 'rows.malformed' });
});
