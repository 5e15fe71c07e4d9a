import { expect, test } from 'vitest';
import type { EnergyDocument, EnergyResult } from '../../src/energy/energyDocument.ts';
import { near } from '../energy/near.ts';
import { benchFolder } from './benchFolder.ts';
import { runCommand } from './runCommand.ts';

/** Rows of a log, one every so many seconds. */
function rows(stepS: number, endS: number, row: (t: number) => readonly (number | string)[]): string[] {
  const lines: string[] = [];
  for (let t = 0; t <= endS; t += stepS) lines.push([t, ...row(t)].join(','));
  return lines;
}

/** 20 A from 13.2 V down to 10.8 V within four hours, then off: 960 Wh, 80 Ah. */
const direct = [
  'time (s),voltage (V),current (A)',
  ...rows(10, 4.1 * 3600, (t) =>
    t <= 4 * 3600 ? [(13.2 - (2.4 * t) / 14_400).toFixed(3), '20.00'] : ['11.600', '0.00'],
  ),
].join('\n');
/** 204 W at the outlet meanwhile: 816 Wh. */
const outlet = [
  'time (s),power (W),power factor',
  ...rows(10, 4.1 * 3600, (t) => (t <= 4 * 3600 ? ['204.0', '1.00'] : ['0.0', '0.00'])),
].join('\n');

const folder = benchFolder({
  'dc.csv': direct,
  'ac.csv': outlet,
  'meter.yaml': 'voltageGainPercent: 0.1\ncurrentGainPercent: 0.2\npowerGainPercent: 0.3\nclockPpm: 20\n',
  'empty.csv': '',
});

async function energy(...words: string[]): Promise<{
  readonly code: number | null;
  readonly stderr: string;
  readonly document: EnergyDocument;
}> {
  const { code, stdout, stderr } = await runCommand(['energy', '--json', ...words], folder);
  return { code, stderr, document: JSON.parse(stdout) as EnergyDocument };
}

function resultOf({ document }: { readonly document: EnergyDocument }, at = 0): EnergyResult {
  const result = document.results[at]!;
  if ('error' in result) throw new Error(result.error.message);
  return result;
}

test('a discharge: its run, what of the rating that is, and its claims', async () => {
  const run = await energy(
    ...[
      'dc.csv',
      '--rated',
      '1000Wh',
      '--rated-ah',
      '100Ah',
      '--label',
      'Unit A',
      '--instrument',
      'meter.yaml',
    ],
    ...['--claim', 'capacity 1000 Wh', '--claim', 'runtime > 3.9 h'],
  );
  expect(run.code).toBe(0);
  const result = resultOf(run);
  expect(result).toMatchObject({ file: 'dc.csv', label: 'Unit A', log: { rows: 1476, side: 'dc' } });
  const [discharge, off] = result.runs;
  expect([discharge!.kind, off!.kind]).toEqual(['discharge', 'off']);
  // Half an interval of 10 s behind the last row under load is counted: 20 A for 5 s, at 10.8 V. Volts of three digits
  // behind the point, each off by half of the last at most, leave 5e-5 of the energy.
  const halfAh = (20 * 5) / 3600;
  near(discharge!.energyWh, 960 + 10.8 * halfAh, 960 * 5e-5);
  near(discharge!.chargeAh, 80 + halfAh, 80 * 1e-9);
  expect(discharge!.durationS.value).toBe(14_400);
  near(discharge!.meanVoltageV, (960 + 10.8 * halfAh) / (80 + halfAh), 12 * 5e-5);
  expect(discharge!.startVoltageV.value).toBe(13.2);
  // Under load: the row behind it is the rebound.
  expect(discharge!.endVoltageV.value).toBe(10.8);
  // Energy over the hours of its rows, half an interval more than the run time; of a rating of 1000 Wh.
  near(discharge!.rate, (960 + 10.8 * halfAh) / (4 + 5 / 3600) / 1000, 0.24 * 5e-5);
  near(result.ratios.usableSharePercent!, (100 * (960 + 10.8 * halfAh)) / 1000, 96 * 5e-5);
  near(result.ratios.usableChargeSharePercent!, 80 + halfAh, 80 * 1e-9);
  expect(result.claims.map(({ outcome }) => outcome)).toEqual(['pass', 'pass']);
});

test('a claim that fails is exit code 1, a file that can’t be read 2, and the others are still read', async () => {
  expect((await energy('dc.csv', '--claim', 'runtime > 5 h')).code).toBe(1);
  const both = await energy('empty.csv', 'dc.csv', '--claim', 'runtime > 5 h');
  expect(both.code).toBe(2);
  expect(both.stderr).toMatch(/^empty\.csv: .+\n$/);
  expect(both.document.results).toMatchObject([{ error: { code: 'file.empty' } }, { file: 'dc.csv' }]);
});

test('two logs of one discharge have an efficiency together', async () => {
  const run = await energy('--input', 'dc.csv', '--output', 'ac.csv', '--claim', 'efficiency > 80 %');
  expect(resultOf(run, 1).log.side).toBe('ac');
  const { conversionEfficiencyPercent } = run.document.together!;
  // 816 of 960 Wh, each with half of its last interval of 10 s: at 204 W, and 20 A at 10.8 V; rounding as above.
  const [outWh, inWh] = [816 + (204 * 5) / 3600, 960 + (216 * 5) / 3600];
  near(conversionEfficiencyPercent!, (100 * outWh) / inWh, 85 * 5e-5);
  expect(resultOf(run, 1).claims).toMatchObject([{ outcome: 'pass' }]);
  expect(run.code).toBe(0);
});

test.each([
  [['--input', 'dc.csv'], '--input and --output go together'],
  [[], 'name a log'],
  [['dc.csv', '--input', 'dc.csv', '--output', 'ac.csv'], 'no other log'],
  [['dc.csv', '--rated', 'much'], 'is not what a unit is rated at'],
  [['dc.csv', '--claim', 'pure sine'], "can't be understood of an energy log"],
])('wrong words: %s', async (words, said) => {
  const { code, stderr } = await runCommand(['energy', ...words], folder);
  expect(code).toBe(2);
  expect(stderr).toContain(said);
});

test('the terminal has the answer in a sentence, all runs with --all, and budgets', async () => {
  const { stdout } = await runCommand(
    ['energy', 'dc.csv', '--rated', '1000Wh', '--claim', 'runtime > 5 h', '--all', '--budget'],
    folder,
  );
  const said = stdout.replaceAll(/\s+/g, ' ');
  expect(said).toMatch(/^dc\.csv Discharge: 960 ± \d+ Wh \(80\.0 ± 0\.\d Ah\) in 4 h, 240/);
  expect(said).toContain('from 13.20 ± 0.06 V to 10.80 ± 0.05 V under load.');
  // √(0.5² + 1² + 0.2²) / √3 = 0.66 % of gains and offset, at most twice that.
  expect(said).toMatch(/Usable share 96\.0 ± 1\.[123] %/);
  expect(said).toContain('“runtime > 5 h” fails (4 h)');
  expect(stdout).toContain('\nRuns\n');
  expect(stdout).toContain('energy of run 1, discharge');
  for (const line of stdout.split('\n\n')[0]!.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
});
