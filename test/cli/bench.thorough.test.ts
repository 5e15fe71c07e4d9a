import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { BenchDocument } from '../../src/bench/benchDocument.ts';
import { readPlan } from '../../src/bench/plan/readPlan.ts';
import { loadCapture } from '../bench/loadCapture.ts';
import { benchFolder } from './benchFolder.ts';
import { runCommand } from './runCommand.ts';
import { smallCapture } from './smallCapture.ts';

const unit = (name: string, more = '') =>
  `units:\n  - name: ${name}\n    claims: [pure sine]\n    captures:\n      - { file: red/0w.csv, load: 0 }\n      - { file: red/300w.csv, load: 300 W }\n${more}`;

const folder = benchFolder({
  'red/0w.csv': smallCapture({ rmsV: 121 }),
  'red/300w.csv': smallCapture({ rmsV: 119.5, seed: 2 }),
  'red/600w.csv': smallCapture({ rmsV: 118, seed: 3 }),
  'blue/600w.csv': smallCapture({ shape: 'modified' }),
  'broken.csv': 'no numbers\n',
  'plan.yaml': unit('red'),
  'scope.yaml': 'gainPercent: 1\n',
  'compare.yaml': `earlier: [first/bench.json]\ninstrument: scope.yaml\n${unit('red')}`,
  'broken.yaml': unit(
    'red',
    '      - { file: broken.csv, load: 600 W }\n      - { file: missing.csv, load: 1 kW }\n',
  ),
  'misspelt.yaml': unit('red').replace('claims:', 'claim:'),
  'noscope.yaml': `instrument: nowhere.yaml\n${unit('red')}`,
  'noearlier.yaml': `earlier: [scope.yaml]\n${unit('red')}`,
  'in-the-way': 'a file',
});
const sweep = ['0W=red/0w.csv', '300=red/300w.csv', '0.6kW=red/600w.csv'];
const documentIn = (out: string): BenchDocument =>
  JSON.parse(readFileSync(join(folder, out, 'bench.json'), 'utf8')) as BenchDocument;

describe('captures named with their loads', () => {
  test('are a sweep: the answer, a table, bench.json; exit code 0 where the claims hold', async () => {
    const words = ['bench', ...sweep, '--claim', 'pure sine', '--claim', 'power 600 W', '--out', 'first'];
    const { code, stdout, stderr } = await runCommand(words, folder);
    expect(stderr).toBe('');
    expect(code).toBe(0);
    expect(stdout).toMatch(/^The unit under test\n {2}Regulation \d\.\d+ ± 0\.\d+ % from 0 W to 600 W\./);
    const { points, regulation } = documentIn('first').units[0]!;
    const [noLoad, , fullLoad] = points.map(({ rmsV }) => rmsV.value ?? 0);
    expect(regulation.regulationPercent.value).toBe(100 * (noLoad! / fullLoad! - 1));
    expect(stdout).toMatch(/\n {2}load +V +Hz/);
    expect(documentIn('first').units[0]?.points.map(({ loadW }) => loadW.value)).toEqual([0, 300, 600]);
    expect(readdirSync(join(folder, 'first')).sort()).toEqual(['bench.json', 'index.html', 'sweep-unit.svg']);
    expect(stdout).toContain('  Sheet: first/sweep-unit.svg\n');
  });

  test('exit code 1 where a claim fails or can’t be judged', async () => {
    const failing = ['bench', ...sweep, '600W=blue/600w.csv', '--claim', 'pure sine', '--out', 'fails'];
    expect((await runCommand(failing, folder)).code).toBe(1);
    const unjudged = ['bench', ...sweep, '--claim', 'transfer < 20 ms', '--out', 'fails'];
    expect((await runCommand(unjudged, folder)).code).toBe(1);
  });

  test('--json prints the document that is written', async () => {
    const { stdout } = await runCommand(['bench', ...sweep, '--json', '--out', 'json'], folder);
    // What is printed is no file that a later run could take for its own.
    const { seal, ...written } = documentIn('json') as BenchDocument & { seal?: string };
    expect(seal).toMatch(/^sineassay-seal-[0-9a-f]{64}$/);
    expect(JSON.parse(stdout)).toEqual(written);
    expect(stdout).not.toContain('NaN');
  });

  test('--sheets writes a sheet of each capture and the document names it', async () => {
    await runCommand(['bench', ...sweep, '--sheets', '--out', 'sheets'], folder);
    const sheets = documentIn('sheets').units[0]?.points.map(({ sheet }) => sheet);
    expect(sheets).toEqual(['0w.svg', '300w.svg', '600w.svg']);
    for (const sheet of sheets ?? []) expect(existsSync(join(folder, 'sheets', sheet ?? ''))).toBe(true);
  });
});

describe('a plan', () => {
  test('is measured, its paths taken from its own folder', async () => {
    const { code, stdout } = await runCommand(
      ['bench', '../plan.yaml', '--out', 'here'],
      join(folder, 'red'),
    );
    expect(code).toBe(0);
    expect(documentIn('red/here').units[0]?.points.map(({ file }) => file)).toEqual(['0w.csv', '300w.csv']);
    expect(stdout).toMatch(/^red\n/);
  });

  test('stands beside the results of an earlier day', async () => {
    await runCommand(['bench', 'plan.yaml', '--out', 'first'], folder);
    const { code, stdout } = await runCommand(['bench', 'compare.yaml', '--out', 'second'], folder);
    expect(code).toBe(0);
    expect(stdout).toMatch(/\nSide by side +red +red, earlier\n/);
    expect(existsSync(join(folder, 'second', 'comparison.svg'))).toBe(true);
    const { units, comparison } = documentIn('second');
    expect(units.map(({ earlier }) => earlier)).toEqual([undefined, 'bench.json']);
    expect(comparison.every(({ figures }) => figures.length === 2)).toBe(true);
  });

  test('with captures that can’t be read: a line each, code 2, the others still measured', async () => {
    const { code, stdout, stderr } = await runCommand(['bench', 'broken.yaml', '--out', 'broken'], folder);
    expect(code).toBe(2);
    expect(stderr.trimEnd().split('\n')).toEqual([
      expect.stringMatching(/^broken\.csv[:,]/),
      expect.stringMatching(/^missing\.csv: The file could not be read/),
    ]);
    expect(stdout).toContain('Regulation');
    expect(documentIn('broken').failures).toHaveLength(2);
  });

  test.each([
    ['misspelt.yaml', /^misspelt\.yaml, line 3: The key "claim" is not known in a unit; expected the keys /],
    ['absent.yaml', /^absent\.yaml: The file could not be read/],
    ['broken.csv', /^broken\.csv, line 1: This is not a plan/],
  ])('%s that is none: one line, code 2, nothing measured or written', async (plan, line) => {
    const { code, stdout, stderr } = await runCommand(['bench', plan, '--out', 'never'], folder);
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(line);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    expect(existsSync(join(folder, 'never'))).toBe(false);
  });

  test('names an instrument or an earlier result that is none: code 2', async () => {
    const instrument = await runCommand(['bench', 'noscope.yaml', '--out', 'x'], folder);
    expect([instrument.code, instrument.stderr]).toEqual([
      2,
      expect.stringMatching(/^nowhere\.yaml: The file could not be read[^\n]*\n$/),
    ]);
    const earlier = await runCommand(['bench', 'noearlier.yaml', '--out', 'x'], folder);
    expect([earlier.code, earlier.stderr]).toEqual([2, expect.stringMatching(/^scope\.yaml: /)]);
    expect(earlier.stdout).toContain('Regulation');
  });
});

describe('--png and --card', () => {
  const evening = benchFolder({
    'red/0w.csv': smallCapture({ rmsV: 121 }),
    'red/300w.csv': smallCapture({ rmsV: 119.5, seed: 2 }),
    'blue/0w.csv': smallCapture({ rmsV: 120, seed: 3 }),
    'blue/300w.csv': smallCapture({ rmsV: 118, seed: 4 }),
    'red/step.csv': loadCapture({ loadW: 300 }),
    'red/transfer.csv': loadCapture({ loadW: 300, lostS: 0.1, backS: 0.114 }),
    'plan.yaml': `units:
  - name: red
    captures: [{ file: red/0w.csv, load: 0 }, { file: red/300w.csv, load: 300 }]
    steps: [{ file: red/step.csv, to: 300 W }]
    transfers: [{ file: red/transfer.csv }]
  - name: blue
    captures: [{ file: blue/0w.csv, load: 0 }, { file: blue/300w.csv, load: 300 }]
`,
  });

  test('make a picture and a card of each sweep, of each step and transfer, and of the comparison', async () => {
    const words = ['bench', 'plan.yaml', '--png', '--card', 'dark', '--markdown', '--out', 'out'];
    const { code, stderr } = await runCommand(words, evening);
    expect([code, stderr]).toEqual([0, '']);
    const written = readdirSync(join(evening, 'out'));
    // The page of changes along a record goes with its sheet, whose card is of both.
    const sheets = written.filter((name) => /\.svg$/.test(name) && !/-card|-changes/.test(name));
    expect(sheets.sort()).toEqual(
      expect.arrayContaining([
        'comparison.svg',
        'step.svg',
        'sweep-blue.svg',
        'sweep-red.svg',
        'transfer.svg',
      ]),
    );
    for (const sheet of sheets) {
      const name = sheet.replace(/\.svg$/, '');
      expect(written, name).toContain(`${name}.png`);
      expect(written, name).toContain(`${name}-card.svg`);
      expect(written, name).toContain(`${name}-card.png`);
    }
    const png = readFileSync(join(evening, 'out', 'sweep-red.png'));
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([1920, 1080]);
    // What was made as a picture is linked as one.
    const markdown = readFileSync(join(evening, 'out', 'bench.md'), 'utf8');
    expect(markdown).toContain('(./sweep-red.png)');
    expect(markdown).not.toContain('sweep-red.svg');
  });
});

describe('--init', () => {
  const found = benchFolder({ 'a-0w.csv': smallCapture(), 'a-300w.csv': smallCapture(), empty: null });

  test('writes a plan that bench takes as it is, and never over another', async () => {
    const first = await runCommand(['bench', '--init', '.'], found);
    expect([first.code, first.stderr]).toEqual([0, '']);
    expect(first.stdout).toMatch(/^plan\.yaml: 2 captures\./);
    expect((await runCommand(['bench', 'plan.yaml'], found)).code).toBe(0);
    const before = readFileSync(join(found, 'plan.yaml'), 'utf8');
    const again = await runCommand(['bench', '--init', '.'], found);
    expect([again.code, again.stderr]).toEqual([2, expect.stringContaining('--force')]);
    expect(readFileSync(join(found, 'plan.yaml'), 'utf8')).toBe(before);
    expect((await runCommand(['bench', '--init', '.', '--force'], found)).code).toBe(0);
  });

  test('looks into the captures, and takes units from folders below alone', async () => {
    const evening = benchFolder({
      'red/0w.csv': smallCapture(),
      'red/300w/ch1.csv': smallCapture(),
      // Its name says a steady load, the record a step.
      'red/600w.csv': loadCapture({ loadW: 600, underV: 114 }),
      'red/900w.csv': loadCapture({ loadW: 300, lostS: 0.1, backS: 0.114 }),
      'broken.csv': 'no numbers\n',
    });
    const { code, stdout, stderr } = await runCommand(['bench', '--init', '.'], evening);
    expect([code, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/^plan\.yaml: 5 captures\./);
    const [unit, red] = readPlan(readFileSync(join(evening, 'plan.yaml'), 'utf8')).units;
    expect([unit?.name, red?.name]).toEqual(['unit', 'red']);
    // What can't be read is named all the same.
    expect(unit?.captures.map(({ file }) => file)).toEqual(['broken.csv']);
    expect(red?.captures.map(({ file, told }) => [file, told.loadW])).toEqual([
      ['red/0w.csv', 0],
      ['red/300w/ch1.csv', 300],
    ]);
    expect(red?.steps.map(({ file, told }) => [file, told.toW])).toEqual([['red/600w.csv', 600]]);
    expect(red?.transfers.map(({ file }) => file)).toEqual(['red/900w.csv']);
  });

  test('of a folder without captures: code 2 and no plan', async () => {
    const { code, stderr } = await runCommand(['bench', '--init', 'empty'], found);
    expect([code, stderr]).toEqual([2, expect.stringMatching(/^empty: There is no capture/)]);
    expect(readdirSync(join(found, 'empty'))).toEqual([]);
  });
});

test.each([
  ['nothing named', [], /name a plan/],
  ['a plan among pairs', ['plan.yaml', '0W=red/0w.csv'], /one plan, or nothing but captures/],
  ['an option that a plan states', ['plan.yaml', '--label', 'Red'], /--label goes with load=file/],
  ['a load that is none', ['much=red/0w.csv'], /"much" is no load/],
  ['a claim that is none', ['0W=red/0w.csv', '--claim', 'nice'], /claim "nice" can't be understood/],
  ['--init with a plan', ['--init', '.', 'plan.yaml'], /--init takes a folder/],
])('%s: code 2', async (_, words, message) => {
  const { code, stderr } = await runCommand(['bench', ...words, '--out', 'unused'], folder);
  expect(code).toBe(2);
  expect(stderr).toMatch(message);
});

test('where sheets and results can’t be written the answer is still given', async () => {
  const words = ['bench', ...sweep, '--sheets', '--out', 'in-the-way'];
  const { code, stdout, stderr } = await runCommand(words, folder);
  expect(code).toBe(2);
  const lines = stderr.trimEnd().split('\n');
  expect(lines).toHaveLength(4);
  for (const line of lines) expect(line).toMatch(/in-the-way could not be written.*--out/);
  expect(stdout).toContain('Regulation');
});
