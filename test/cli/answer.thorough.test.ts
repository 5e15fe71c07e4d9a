import { spawn } from 'node:child_process';
import { expect, inject, test } from 'vitest';
import { benchFolder } from './benchFolder.ts';
import { runCommand } from './runCommand.ts';
import { smallCapture } from './smallCapture.ts';

const folder = benchFolder({
  'a/sine.csv': smallCapture(),
  'a/modified.csv': smallCapture({ shape: 'modified', layout: 'blanks' }),
  'a/stairs.csv': smallCapture({ shape: 'staircase', cycles: 1.5, sampleRateHz: 4000 }),
  'a/direct.csv': smallCapture({ shape: 'dc', layout: 'blanks' }),
  'a/noise.csv': smallCapture({ shape: 'noise', bits: 4 }),
  'a/behind-probe.csv': smallCapture({ shape: 'clipped', probeRatio: 200, bits: 5, cycles: 1.7 }),
  'empty.csv': '',
});

const claims = ['pure sine', '120 V ±5 %', '60 Hz ±0.5 Hz', 'THD < 3 %', 'crest 1.38..1.45', '230 V'];
const told = [
  ...claims.flatMap((claim) => ['--claim', claim]),
  ...['--label', 'Inverter A, the one with the red case and the loud fan', '--load', '300 W resistive'],
];

test('an answer is of lines of 80 characters, nothing cut, a blank line between two', async () => {
  const { stdout } = await runCommand(['measure', 'empty.csv', 'a', ...told], folder);
  const answers = stdout.trimEnd().split('\n\n');
  expect(answers.length).toBe(6);
  for (const answer of answers) {
    const lines = answer.split('\n');
    // Only the name above it may be cut.
    expect(lines.slice(1).join()).not.toContain('…');
    expect(lines[0]).toMatch(/^a\/[a-z-]+\.csv/);
    for (const line of lines) expect([...line].length).toBeLessThanOrEqual(80);
    expect(answer).toContain('Say: ');
    expect(answer.replaceAll(/\s+/g, ' ')).toContain('300 W resistive');
  }
});

test('--all goes on to every figure, harmonic and finding', async () => {
  const { stdout } = await runCommand(['measure', 'a/sine.csv', '--all'], folder);
  for (const part of ['form factor', 'Voltage harmonics', 'Against reference limits', 'SHA-256']) {
    expect(stdout).toContain(part);
  }
  expect(stdout).toMatch(/\n +50 +\d/);
});

test.each([['--json'], ['--all']])(
  'a reader that has seen enough of %s ends it without a word',
  async (option) => {
    const words = [inject('command'), 'measure', 'a', option];
    const child = spawn(process.execPath, words, { cwd: folder });
    let stderr = '';
    child.stderr.on('data', (chunk: Buffer) => {
      stderr += chunk.toString();
    });
    child.stdout.once('data', () => child.stdout.destroy());
    const code = await new Promise((done) => child.on('close', done));
    expect(stderr).toBe('');
    expect(code).toBe(0);
  },
);
