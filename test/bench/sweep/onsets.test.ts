import { describe, expect, test } from 'vitest';
import { clippingOnset, rangeExit, voltageRange } from '../../../src/bench/sweep/clippingOnset.ts';
import { worded } from '../../../src/words/worded.ts';
import { point } from '../benchPoints.ts';

describe('clippingOnset', () => {
  test('a crest factor that falls by a tenth between two loads: where it has lost 2 %', () => {
    const onset = clippingOnset([
      point(0, 120, { crest: 1.4 }),
      point(500, 118, { crest: 1.4 }),
      point(1000, 110, { crest: 1.26 }),
    ]);
    expect(onset.betweenW).toEqual([500, 1000]);
    // 0.028 of a fall of 0.14 is a fifth of the way from 500 to 1000 W; the other end is 400 W away.
    if (onset.atW.value === null) throw new Error(JSON.stringify(onset.atW.reason));
    expect(Math.abs(onset.atW.value - 600)).toBeLessThan(1e-9);
    expect(Math.abs(onset.atW.uncertainty - 400)).toBeLessThan(1e-9);
    expect(onset.shownBy).toBe('crest factor 1.400 to 1.260');
  });

  test('a THD that rises by more than two points', () => {
    const onset = clippingOnset([point(0, 120), point(300, 119, { thd: 2 }), point(600, 118, { thd: 4 })]);
    expect(onset.betweenW).toEqual([300, 600]);
    expect(onset.shownBy).toBe('THD 2.0 to 4.0 %');
  });

  test('a fall within the uncertainty shows nothing', () => {
    const wide = { value: 1.36, uncertainty: 0.06 };
    const onset = clippingOnset([point(0, 120), { ...point(600, 118), crestFactor: wide }]);
    expect(worded(onset.atW)).toEqual({ value: null, reason: 'the tops are not flattened up to 600 W' });
  });

  test('a modified sine has no tops to flatten', () => {
    const points = [
      point(0, 120, { kind: 'modified sine' }),
      point(600, 118, { kind: 'modified sine', crest: 1.2 }),
    ];
    expect(clippingOnset(points).betweenW).toBe(null);
  });
});

describe('rangeExit', () => {
  const nominal = { voltageV: 120, frequencyHz: 60, inferred: true };

  test('a claim comes before the nominal', () => {
    expect(voltageRange({ min: 114 }, nominal)).toEqual({ limit: { min: 114 }, from: 'claim' });
    expect(voltageRange(null, nominal)).toEqual({ limit: { min: 108, max: 132 }, from: 'nominal ±10 %' });
    expect(voltageRange(null, null)).toBe(null);
  });

  test('straight between the captures around it', () => {
    const range = voltageRange({ min: 114, max: 126 }, nominal);
    const exit = rangeExit([point(0, 120), point(600, 117), point(900, 108)], range);
    // 3 V of 9 V: 700 W; the farther capture is 200 W away.
    expect(exit.betweenW).toEqual([600, 900]);
    if (exit.atW.value === null) throw new Error(JSON.stringify(exit.atW.reason));
    expect(Math.abs(exit.atW.value - 700)).toBeLessThan(1e-9);
    expect(Math.abs(exit.atW.uncertainty - 200)).toBeLessThan(1e-9);
  });

  test.each([
    ['the voltage keeps to its range up to 600 W', [point(0, 120), point(600, 117)]],
    ['outside its range at the lowest load already, 0 W', [point(0, 140), point(600, 117)]],
    ['no capture of a known load', [point(null, 120)]],
  ])('%s', (reason, points) => {
    expect(worded(rangeExit(points, voltageRange(null, nominal)).atW)).toEqual({ value: null, reason });
  });
});

test('a load under which the output was lost tells neither of tops nor of a range', () => {
  const points = [point(0, 120), point(600, 118), point(900, 100, { crest: 1.2, lost: 'output lost' })];
  expect(clippingOnset(points).betweenW).toBe(null);
  const exit = rangeExit(points, voltageRange(null, { voltageV: 120, frequencyHz: 60, inferred: true }));
  expect(worded(exit.atW)).toEqual({ value: null, reason: 'the voltage keeps to its range up to 600 W' });
});
