import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command } from 'commander';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { defineSynth } from '../../../src/cli/synth.ts';

let folder: string;
let said: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'synth-'));
  said = '';
  const hear = (chunk: unknown): boolean => {
    said += String(chunk);
    return true;
  };
  vi.spyOn(process.stdout, 'write').mockImplementation(hear);
  vi.spyOn(process.stderr, 'write').mockImplementation(hear);
});

afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true });
});

async function run(...words: string[]): Promise<void> {
  const program = new Command('sineassay');
  defineSynth(program.command('synth').exitOverride());
  await program.parseAsync(['synth', ...words], { from: 'user' });
}

test('synth writes a capture and its truth', async () => {
  const out = join(folder, 'test.csv');
  await run('modified', '--duty', '50', '--rms', '100', '--cycles', '4.7', '--layout', 'tab', '--out', out);
  expect(readdirSync(folder).sort()).toEqual(['test.csv', 'test.csv.truth.json']);
  expect(readFileSync(out, 'utf8').split('\n')[0]).toBe('time / s\tOutput / V');
  const truth = JSON.parse(readFileSync(`${out}.truth.json`, 'utf8'));
  expect(truth.kind).toBe('modified sine');
  expect(Math.abs(truth.rmsV - 100)).toBeLessThan(1e-10);
  expect(Math.abs(truth.crestFactor - Math.SQRT2)).toBeLessThan(1e-12);
  expect(truth.harmonics.length).toBe(50);
  // 4.7 cycles of 60 Hz at 100 kS/s.
  expect(truth.record.samples).toBe(7833);
  expect(said).toContain('modified sine');
});

test.each([
  ['an unknown wave', ['wobble']],
  ['an unknown layout', ['sine', '--layout', 'heap']],
  ['text for a number', ['sine', '--rms', 'much']],
  ['a record of nothing', ['sine', '--rate', '0']],
  ['an even number of levels', ['staircase', '--levels', '4']],
  ['half bits', ['sine', '--bits', '7.5']],
])('synth refuses %s and writes nothing', async (_, words) => {
  const out = join(folder, 'test.csv');
  await expect(run(...words, '--out', out)).rejects.toMatchObject({ name: 'CommanderError' });
  expect(said).toMatch(/^error: /);
  expect(readdirSync(folder)).toEqual([]);
});

test('synth says so where it cannot write', async () => {
  const out = join(folder, 'nowhere', 'test.csv');
  await expect(run('sine', '--out', out)).rejects.toMatchObject({ name: 'CommanderError', exitCode: 2 });
  expect(said).toContain('nowhere');
});

test('synth explains itself with an example', async () => {
  await expect(run('--help')).rejects.toMatchObject({ exitCode: 0 });
  expect(said).toContain('sineassay synth modified');
});
