import { expect, test } from 'vitest';
import { selfcheck } from '../../src/synth/selfcheck.ts';

test('every built-in wave is inside what the analyser claims, and of the right kind', () => {
  const captures = [...selfcheck()];
  const outside = captures.filter(({ holds }) => !holds);
  expect(outside).toEqual([]);
  // Eleven waves, two rates, two lengths, two resolutions, four figures each.
  expect(captures.length).toBe(88);
  expect(captures.every(({ figures }) => figures.length === 4)).toBe(true);
  expect(new Set(captures.map(({ kind }) => kind.truth))).toEqual(
    new Set(['pure sine', 'distorted sine', 'modified sine', 'square', 'stepped']),
  );
});

test('what a perfect instrument would claim is far less than what is told of an assumed one', () => {
  const [first] = selfcheck();
  const rms = first!.figures[0]!;
  expect(rms.ownUncertainty).toBeLessThan(0.05 * rms.uncertainty);
  expect(rms.ownUncertainty).toBeGreaterThan(0);
});
