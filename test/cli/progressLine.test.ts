import { truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { progressLine } from '../../src/cli/progressLine.ts';
import { benchFolder } from './benchFolder.ts';

function terminal(isTTY: boolean) {
  const written: string[] = [];
  return { isTTY, columns: 60, written, write: (text: string) => written.push(text) };
}

/** Begins four files, half a second each. */
function fourFiles(screen: ReturnType<typeof terminal>, quiet = false): void {
  vi.useFakeTimers({ toFake: ['performance'] });
  const progress = progressLine(4, { quiet, terminal: screen });
  for (const name of ['a.csv', 'b.csv', 'c.csv', 'd\x1b[31m.csv']) {
    progress.begin(name);
    vi.advanceTimersByTime(600);
  }
  progress.clear();
  progress.clear();
  vi.useRealTimers();
}

test('a run over a second shows a bar and the file it is at, and takes them away once', () => {
  const screen = terminal(true);
  fourFiles(screen);
  expect(screen.written).toEqual([
    '\r\x1b[2K[##########..........] 3 of 4  c.csv',
    '\r\x1b[2K[###############.....] 4 of 4  d\ufffd[31m.csv',
    '\r\x1b[2K',
  ]);
});

test('a pipe and --quiet get nothing', () => {
  const pipe = terminal(false);
  fourFiles(pipe);
  expect(pipe.written).toEqual([]);
  const quiet = terminal(true);
  fourFiles(quiet, true);
  expect(quiet.written).toEqual([]);
});

test('a long file is named at once, on a line no longer than the terminal is wide', () => {
  const file = join(benchFolder({}), `${'long'.repeat(20)}.csv`);
  writeFileSync(file, '');
  truncateSync(file, 40e6);
  const screen = terminal(true);
  progressLine(1, { terminal: screen }).begin(file);
  const [line = ''] = screen.written;
  expect(line).toContain('1 of 1');
  expect(line.length).toBeLessThan('\r\x1b[2K'.length + screen.columns);
});

test('a file that takes long shows how far it is read, and that it is measured, once each', () => {
  const screen = terminal(true);
  vi.useFakeTimers({ toFake: ['performance'] });
  const progress = progressLine(2, { terminal: screen });
  progress.begin('a.csv');
  progress.read(0.1);
  vi.advanceTimersByTime(1100);
  for (const share of [0.5, 0.5, 0.51, 1]) progress.read(share);
  progress.measure();
  progress.clear();
  vi.useRealTimers();
  expect(screen.written).toEqual([
    '\r\x1b[2K[##..................] 1 of 2  reading a.csv',
    '\r\x1b[2K[####................] 1 of 2  reading a.csv',
    '\r\x1b[2K[####................] 1 of 2  measuring a.csv',
    '\r\x1b[2K',
  ]);
});
