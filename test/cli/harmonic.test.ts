import { InvalidArgumentError } from 'commander';
import { expect, test } from 'vitest';
import { finiteNumbers, harmonic } from '../../src/cli/synthesisOptions.ts';

test('harmonic reads order=percent with a phase or without, and gathers', () => {
  const first = harmonic('3=5');
  expect(first).toEqual([{ order: 3, ratio: 0.05, phaseRad: 0 }]);
  expect(harmonic('5=2.5@-90', first)).toEqual([
    { order: 3, ratio: 0.05, phaseRad: 0 },
    { order: 5, ratio: 0.025, phaseRad: -Math.PI / 2 },
  ]);
});

test.each(['3', '3=', '=5', 'a=5', '3=b', '3=5@', '3=5@x'])('harmonic refuses %s', (text) => {
  expect(() => harmonic(text)).toThrow(InvalidArgumentError);
});

test('finiteNumbers reads a list and refuses what is no number', () => {
  expect(finiteNumbers('12,48.5')).toEqual([12, 48.5]);
  for (const text of ['', '12,', '12,x', '12;48', 'Infinity']) {
    expect(() => finiteNumbers(text)).toThrow(InvalidArgumentError);
  }
});
