import { expect, test } from 'vitest';
import type { ClaimResult } from '../../src/judge/claims/claim.ts';
import { benchFolder } from './benchFolder.ts';
import { measuredResults } from './measuredResults.ts';
import { runCommand } from './runCommand.ts';
import { smallCapture } from './smallCapture.ts';

// 120 V, known to about 4 %: with assumed gain 3 % and probe 2 %, 2 √((3² + 2²) / 3) = 4.2 %.
const folder = benchFolder({
  'sine.csv': smallCapture(),
  'modified.csv': smallCapture({ shape: 'modified' }),
  'empty.csv': '',
});

const holds = '120 V ±10 %';
const probablyHolds = '120 V ±2 %';
const probablyFails = '118 V ±1 %';
const fails = '100 V ±5 %';
const unjudged = '120 V';

async function claimed(
  claims: readonly string[],
  ...words: string[]
): Promise<{ code: number | null; claims: readonly ClaimResult[] }> {
  const options = claims.flatMap((claim) => ['--claim', claim]);
  const run = await runCommand(['measure', '--json', 'sine.csv', ...options, ...words], folder);
  return { code: run.code, claims: measuredResults(run)[0]?.claims ?? [] };
}

test('each claim has its outcome, in the order given, as it was written', async () => {
  const given = [holds, probablyHolds, probablyFails, fails, unjudged, 'pure sine'];
  const { code, claims } = await claimed(given);
  expect(claims.map(({ text }) => text)).toEqual(given);
  expect(claims.map(({ outcome }) => outcome)).toEqual([
    'pass',
    'conditional pass',
    'conditional fail',
    'fail',
    'not judged',
    'pass',
  ]);
  expect(code).toBe(1);
  const [first, second, third, fourth] = claims.map(({ probability }) => probability);
  // A guard band of one expanded uncertainty leaves less than 2.3 % on its far side.
  expect(first).toBeGreaterThan(0.97);
  expect(second).toBeGreaterThan(0.5);
  expect(third).toBeLessThan(0.5);
  expect(fourth).toBeLessThan(0.03);
});

test('--rule simple decides by the value alone', async () => {
  const { claims } = await claimed([holds, probablyHolds, probablyFails, fails], '--rule', 'simple');
  expect(claims.map(({ outcome }) => outcome)).toEqual(['pass', 'pass', 'fail', 'fail']);
});

test.each([
  ['claims that hold and probably hold', [holds, probablyHolds], 0],
  ['a claim that probably fails', [holds, probablyFails], 1],
  ['a claim that can’t be judged', [holds, unjudged], 1],
])('%s: exit code', async (_, claims, code) => {
  expect((await claimed(claims)).code).toBe(code);
});

test('a file that can’t be read wins over a claim that fails, and the claim is still judged', async () => {
  const run = await runCommand(['measure', 'empty.csv', 'sine.csv', '--claim', fails], folder);
  expect(run.code).toBe(2);
  expect(run.stdout).toMatch(/^sine\.csv\n/);
  expect(run.stdout).toContain(`“${fails}” hold? No`);
  expect(run.stderr).toMatch(/^empty\.csv: [^\n]+\n$/);
});

test('findings never change the code', async () => {
  const run = await runCommand(['measure', '--json', 'modified.csv'], folder);
  expect(measuredResults(run)[0]?.findings.some(({ outcome }) => outcome === 'fail')).toBe(true);
  expect(run.code).toBe(0);
});
