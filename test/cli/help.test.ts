import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { limitTables } from '../../src/judge/limits/limitTables.ts';
import { benchFolder } from './benchFolder.ts';
import { runCommand } from './runCommand.ts';

const folder = benchFolder({});

const commands = [
  'measure',
  'report',
  'energy',
  'bench',
  'compare',
  'recheck',
  'page',
  'limits',
  'schema',
  'synth',
  'selfcheck',
];

test.each(commands)('%s explains itself with an example', async (command) => {
  const { code, stdout } = await runCommand([command, '--help'], folder);
  expect(code).toBe(0);
  expect(stdout).toMatch(new RegExp(`Examples?:\\n  sineassay ${command}`));
  for (const line of stdout.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
});

test('the help names every command and warns of mains voltage', async () => {
  const { code, stdout } = await runCommand(['--help'], folder);
  expect(code).toBe(0);
  for (const word of commands) expect(stdout).toContain(`\n  ${word} `);
  expect(stdout).toContain('mains voltage can kill');
});

test('--version is that of the package', async () => {
  const { stdout } = await runCommand(['--version'], folder);
  expect(stdout.trim()).toBe(JSON.parse(readFileSync('package.json', 'utf8')).version);
});

test.each([
  ['no word', []],
  ['an unknown command', ['weigh']],
  ['no capture', ['measure']],
])('%s: exit code 2 and nothing on standard output', async (_, words) => {
  const { code, stdout, stderr } = await runCommand(words, folder);
  expect(code).toBe(2);
  expect(stdout).toBe('');
  expect(stderr).not.toBe('');
});

test('limits prints every table with its edition and where its values are from', async () => {
  const { code, stdout } = await runCommand(['limits'], folder);
  expect(code).toBe(0);
  for (const { standard, edition } of limitTables()) {
    expect(stdout).toContain(standard);
    expect(stdout).toContain(edition);
  }
  expect(stdout).toContain('from a public page');
  expect(stdout).toContain('from memory');
});
