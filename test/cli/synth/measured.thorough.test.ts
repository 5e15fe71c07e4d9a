import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Command } from 'commander';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import type { MeasureResult } from '../../../src/assay/measureDocument.ts';
import { defineSynth } from '../../../src/cli/synth.ts';
import type { StatedTruth } from '../../../src/synth/synthesise.ts';
import { waveNamed } from '../../../src/synth/waveNamed.ts';
import { benchFolder } from '../benchFolder.ts';
import { measuredResults } from '../measuredResults.ts';
import { runCommand } from '../runCommand.ts';

/** Each wave as the command makes it untold, at phases and lengths of its own. */
const waves = Object.keys(waveNamed).map((wave, i) => ({
  wave,
  words: ['--cycles', String(3.3 + 0.37 * i), '--phase', String(25 * i), '--edge', '0.2'],
}));
const folder = benchFolder({});
let results: ReadonlyMap<string, MeasureResult>;

beforeAll(async () => {
  const program = new Command('sineassay');
  defineSynth(program.command('synth'));
  vi.spyOn(process.stdout, 'write').mockReturnValue(true);
  for (const { wave, words } of waves) {
    const out = join(folder, `${wave}.csv`);
    await program.parseAsync(['synth', wave, ...words, '--out', out], { from: 'user' });
  }
  vi.restoreAllMocks();
  const run = await runCommand(['measure', '--json', '.'], folder);
  results = new Map(measuredResults(run).map((result) => [result.file, result]));
});

test('a capture and its truth for each wave, and nothing else', () => {
  const expected = waves.flatMap(({ wave }) => [`${wave}.csv`, `${wave}.csv.truth.json`]);
  expect(readdirSync(folder).sort()).toEqual(expected.sort());
});

function truthOf(wave: string): StatedTruth {
  return JSON.parse(readFileSync(join(folder, `${wave}.csv.truth.json`), 'utf8'));
}

describe.each(waves)('$wave', ({ wave }) => {
  test('is told for what it is', () => {
    const kind = results.get(`${wave}.csv`)?.waveform.kind;
    expect(kind).toBe(truthOf(wave).kind);
  });
});

const swinging = waves.filter(({ wave }) => wave !== 'dc' && wave !== 'noise');

describe.each(swinging)('$wave', ({ wave }) => {
  test.each([
    ...(['frequencyHz', 'rmsV', 'meanV', 'peakV', 'troughV', 'crestFactor'] as const),
    ...(['formFactor', 'fundamentalV', 'thdPercent'] as const),
  ])('%s lies within its stated uncertainty', (key) => {
    const truth = truthOf(wave);
    const figure = results.get(`${wave}.csv`)?.voltage?.[key];
    if (!figure || figure.value === null) throw new Error(`${key} was not measured`);
    expect(Math.abs(figure.value - (truth[key] ?? Number.NaN))).toBeLessThanOrEqual(figure.uncertainty);
  });
});
