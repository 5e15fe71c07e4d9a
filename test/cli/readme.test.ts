import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { Command } from 'commander';
import { expect, test } from 'vitest';
import { defineBench } from '../../src/cli/bench.ts';
import { defineCompare } from '../../src/cli/compare.ts';
import { defineEnergy } from '../../src/cli/energy.ts';
import { defineMeasure } from '../../src/cli/measure.ts';
import { definePage } from '../../src/cli/page.ts';
import { defineReport } from '../../src/cli/report.ts';
import { defineSynth } from '../../src/cli/synth.ts';
import { runCommand } from './runCommand.ts';

const readme = readFileSync('README.md', 'utf8');
const { scripts } = JSON.parse(readFileSync('package.json', 'utf8'));

/** Words of a command line; quotes hold words together. */
function wordsOf(line: string): string[] {
  return [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? '');
}

/** Each example: its command, and what stands under it. */
const examples = [...readme.matchAll(/```\n\$ npx sineassay (.*)\n([^`]*)```/g)].map(
  ([, command = '', output = '']) => ({ command, output }),
);

test('there is an example', () => {
  expect(examples.length).toBeGreaterThan(0);
});

test.each(examples)('$command prints what the README shows', async ({ command, output }) => {
  const { stdout, stderr } = await runCommand(wordsOf(command), resolve('.'));
  expect(stderr).toBe('');
  expect(stdout).toBe(output);
});

test('the example’s exit code is the one told', async () => {
  const { code } = await runCommand(wordsOf(examples[0]?.command ?? ''), resolve('.'));
  expect(readme).toContain(`The exit code is ${code}`);
});

test('every option named is one of the command', () => {
  const known = [
    defineMeasure,
    defineReport,
    defineEnergy,
    defineBench,
    defineCompare,
    definePage,
    defineSynth,
  ].flatMap((define) => {
    const command = new Command();
    define(command);
    return command.options.map(({ long }) => long);
  });
  // Other programs have options of their own.
  const ours = readme.replaceAll(/^sbatch .* --wrap/gm, '');
  const named = [...ours.matchAll(/(?<![-\w])--[a-z][a-z-]+/g)].map(([option]) => option);
  expect(named.length).toBeGreaterThan(10);
  expect(named.filter((option) => option !== '--help' && !known.includes(option))).toEqual([]);
});

test('every npm command named is one of the package', () => {
  const named = [...readme.matchAll(/npm (?:run )?(\w+)/g)].map(([, name]) => name);
  expect(named.filter((name) => !['ci', 'link'].includes(name!) && !(`${name}` in scripts))).toEqual([]);
});

test('the ratios of speed are those that were measured', () => {
  // The README's tables are padded to one width.
  const rowsOf = (text: string): string[] =>
    text
      .split('\n')
      .map((line) => line.replaceAll(/ +/g, ' '))
      .filter((line) => /^\|.*\d \|$/.test(line));
  const measured = rowsOf(readFileSync('test/speed/results.md', 'utf8'));
  const [, section = ''] = readme.split('### Large captures');
  const quoted = rowsOf(section.split('## ')[0]!);
  expect(quoted.length).toBeGreaterThan(2);
  expect(quoted.filter((row) => !measured.includes(row))).toEqual([]);
});

test('the message for the reader’s own folder and the sheet it shows exist', () => {
  expect(readme).toContain('npm ci && npm start');
  expect(readme).toContain('npm ci && npm test');
  const [, capture] = /reports\/([\w-]+)\.svg/.exec(readme) ?? [];
  expect(readFileSync(`captures/${capture}.csv`).length).toBeGreaterThan(0);
});
