import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, inject, test } from 'vitest';
import { benchFolder } from '../benchFolder.ts';
import { runCommand } from '../runCommand.ts';
import { smallCapture } from '../smallCapture.ts';

const folder = benchFolder({ 'wave.csv': smallCapture({ shape: 'modified' }) });

test('PNG of the same sheet is the same on two runs, and on a machine without fonts', () => {
  const run = (out: string, env: NodeJS.ProcessEnv): void => {
    const words = [inject('command'), 'report', 'wave.csv', '--png', '--card', 'dark', '--out', out];
    execFileSync(process.execPath, words, { cwd: folder, env });
  };
  run('first', process.env);
  run('second', process.env);
  // No home, no configuration of fonts, nothing of the environment but the temporary folder.
  run('bare', {
    TMPDIR: process.env.TMPDIR,
    FONTCONFIG_FILE: '/nowhere',
    FONTCONFIG_PATH: '/nowhere',
    HOME: '/nowhere',
  });
  for (const name of ['wave.png', 'wave-card.png']) {
    const first = readFileSync(join(folder, 'first', name));
    expect(first.length).toBeGreaterThan(10_000);
    for (const other of ['second', 'bare']) {
      expect(Buffer.compare(first, readFileSync(join(folder, other, name)))).toBe(0);
    }
  }
});

test('a card lies beside its sheet as SVG and as a picture of 1920 by 1080, and can be rechecked', async () => {
  const { code } = await runCommand(['report', 'wave.csv', '--card', '--out', 'cards'], folder);
  expect(code).toBe(0);
  const png = readFileSync(join(folder, 'cards', 'wave-card.png'));
  expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([1920, 1080]);
  expect(existsSync(join(folder, 'cards', 'wave.png'))).toBe(false);
  expect((await runCommand(['recheck', 'cards/wave-card.svg', 'wave.csv'], folder)).code).toBe(0);
});

test('a sheet holds its typeface: nothing is fetched for it', () => {
  const svg = readFileSync(join(folder, 'first', 'wave.svg'), 'utf8');
  expect(svg.match(/@font-face/g)?.length).toBe(2);
  expect(svg.match(/url\((?!data:font\/woff2;base64,)/g)).toBeNull();
});
