import { expect, test } from 'vitest';
import { excursions, type HalfCycleRms, withEnds } from '../../src/measure/envelope.ts';

/** An envelope of these values, one every 10 ms. */
function envelope(...values: readonly number[]): HalfCycleRms {
  const rms = Float64Array.from(values);
  const timeS = rms.map((_, k) => k / 100);
  return {
    ...{ timeS, rms, frequencyHz: rms.map(() => 50), seen: new Uint8Array(rms.length).fill(1) },
    ...{ from: timeS.map((t) => 1e4 * t), to: timeS.map((t) => 1e4 * t + 200) },
  };
}

// Thresholds 90, 110 and 10 % with 2 % hysteresis: usual settings, values from memory.
test('a dip ends at the threshold and the hysteresis, with its residual voltage', () => {
  expect(excursions(envelope(100, 89, 60, 91, 91.9, 92, 91), 100)).toEqual([
    { kind: 'dip', startS: 0.01, endS: 0.05, startSeen: true, endSeen: true, durationS: 0.04, extreme: 60 },
  ]);
});

test('a value on the threshold is no dip and no swell', () => {
  expect(excursions(envelope(90, 110, 90, 110), 100)).toEqual([]);
});

test('a swell ends at 108 %', () => {
  const [swell, ...more] = excursions(envelope(100, 111, 130, 108.5, 108, 111), 100);
  expect([swell!.kind, swell!.endS, swell!.extreme]).toEqual(['swell', 0.04, 130]);
  expect(more.map(({ kind, endSeen, startS }) => [kind, endSeen, startS])).toEqual([['swell', false, 0.05]]);
});

test('an interruption is also part of a dip; an open start and end are said', () => {
  const found = excursions(envelope(5, 5, 11, 12, 50, 95, 95, 3), 100);
  expect(found.map(({ kind, startSeen, endSeen }) => [kind, startSeen, endSeen])).toEqual([
    ['dip', false, true],
    ['interruption', false, true],
    ['dip', true, false],
    ['interruption', true, false],
  ]);
  expect(found.map(({ durationS }) => durationS)).toEqual([0.05, 0.03, 0, 0]);
});

test('without a beginning or an end in the record nothing is an excursion from a nominal that nobody told', () => {
  const kept = (...values: readonly number[]): readonly (readonly [string, boolean, boolean])[] => {
    const seen = envelope(...values);
    return withEnds(excursions(seen, 100), seen, 100).map(({ kind, startSeen, endSeen }) => [
      kind,
      startSeen,
      endSeen,
    ]);
  };
  expect(kept(89, 88, 89, 88.5)).toEqual([]);
  expect(kept(112, 113, 112)).toEqual([]);
  // Hovering at the threshold is no beginning.
  expect(kept(90.2, 89.9, 90.1, 89.8)).toEqual([]);
  expect(kept(95, 89, 80, 85)).toEqual([['dip', true, false]]);
  expect(kept(85, 80, 93, 95)).toEqual([['dip', false, true]]);
});
