import { expect, test } from 'vitest';
import { carriedPhases, wholeHalfTurns } from '../../src/signal/phaseTrack.ts';

test('what is seen is unwrapped; what is not is carried on from the nearer side in time', () => {
  // Half turns at positions 10 apart; seen at the first three and the last three, those two turns short.
  const at = Float64Array.of(0, 10, 20, 30, 45, 50, 60, 70);
  const halfTurns = Float64Array.of(0, 1, 2, 0, 0, 3.5, 4.5, 5.5);
  const seen = Uint8Array.of(1, 1, 1, 0, 0, 1, 1, 1);
  const carried = carriedPhases(at, halfTurns, seen, 10);
  // 3.5 is 5.5 less a turn: the line through the first three reaches 5 at 50.
  expect(Array.from(carried)).toEqual([0, 1, 2, 3, 5, 5.5, 6.5, 7.5]);
});

test('a phase that jumps back stands nearly still: time runs forwards', () => {
  const at = Float64Array.of(0, 10, 20, 30);
  const carried = carriedPhases(at, Float64Array.of(0, 1, 1.05, 2.05), Uint8Array.of(1, 1, 1, 1), 10);
  carried.forEach((phase, m) => {
    expect(m === 0 || phase > carried[m - 1]!).toBe(true);
  });
});

test('zeros lie where the phase is whole, the first of an even turn', () => {
  // Phase = (position + 5) / 10.
  const at = Float64Array.of(0, 20, 40);
  const { crossings, seen } = wholeHalfTurns(at, Float64Array.of(0.5, 2.5, 4.5), Uint8Array.of(0, 1, 1), 35);
  expect(Array.from(crossings)).toEqual([-5, 5, 15, 25, 35]);
  expect(Array.from(seen)).toEqual([0, 0, 0, 1, 1]);
});
