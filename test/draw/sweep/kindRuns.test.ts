import { expect, it } from 'vitest';
import { kindRuns } from '../../../src/draw/sweep/sweepRows.ts';
import { benchUnit } from '../../fixtures/benchUnits.ts';

it('takes neighbouring loads with one kind together', () => {
  expect(kindRuns(benchUnit([0, 300, 900, 1200, 1500]).points)).toEqual([
    { words: 'pure sine', kind: 'pure sine', isLost: false, fromW: 0, toW: 900 },
    { words: 'distorted sine', kind: 'distorted sine', isLost: false, fromW: 1200, toW: 1500 },
  ]);
});

it('tells a kind at its edge apart, and leaves out captures of unknown load', () => {
  const [first, second, third] = benchUnit([0, 300, 600]).points;
  const unknown = { ...third!, loadW: { value: null, reason: 'not told' } };
  expect(kindRuns([first!, { ...second!, atTheEdge: true }, unknown])).toEqual([
    { words: 'pure sine', kind: 'pure sine', isLost: false, fromW: 0, toW: 0 },
    { words: 'pure sine, at the edge', kind: 'pure sine', isLost: false, fromW: 300, toW: 300 },
  ]);
  expect(kindRuns([])).toEqual([]);
});

it('names an output that was lost instead of a kind of wave, by itself', () => {
  const [first, second, third] = benchUnit([0, 300, 600]).points;
  expect(kindRuns([first!, second!, { ...third!, lost: 'output lost' }])).toEqual([
    { words: 'pure sine', kind: 'pure sine', isLost: false, fromW: 0, toW: 300 },
    { words: 'output lost', kind: 'pure sine', isLost: true, fromW: 600, toW: 600 },
  ]);
});
