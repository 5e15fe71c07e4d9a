import { describe, expect, test } from 'vitest';
import type { Assay } from '../../../src/assay/assay.ts';
import type { CarriedUnit, Evidence } from '../../../src/draw/evidence.ts';
import { checkedCaptures, recheckCaptures } from '../../../src/publish/recheck/recheckCaptures.ts';
import { assays } from '../../fixtures/assays.ts';

const digestOf = (name: string): string => name.charCodeAt(0).toString(16).padStart(2, '0').repeat(32);
const capture = (file: string) => ({ file, sha256: digestOf(file), options: { claims: [] } });
const point = (file: string) => ({ file, sha256: digestOf(file) });
const unit = (name: string, files: readonly string[], more: object = {}) => ({
  ...{ name, points: files.map(point), steps: [], transfers: [], ...more },
});
const told = (name: string, files: readonly string[], steps: readonly string[] = []): CarriedUnit =>
  ({
    ...{ name, label: name, rule: 'guarded', energy: [], claims: [] },
    sweep: files.map((file) => ({ ...capture(file), told: { loadW: 0 } })),
    steps: steps.map((file) => ({ ...capture(file), told: { fromW: null, toW: null, resistive: null } })),
    transfers: [],
  }) as CarriedUnit;
const comparison = (units: readonly object[], tolds: readonly CarriedUnit[]): Evidence =>
  ({
    picture: 'comparison',
    told: tolds,
    result: { units, comparison: [], failures: [] },
  }) as unknown as Evidence;
const states = (evidence: Evidence, ...again: readonly string[]) =>
  checkedCaptures(evidence, new Set(again.map(digestOf))).map(
    ({ unit: whose, file, state }) => `${whose ?? ''} ${file} ${state}`,
  );

describe('what stands behind a comparison', () => {
  const both = [unit('red', ['a', 'b']), unit('old', ['c'], { earlier: 'bench.json' })];

  test('is named unit by unit, from the result', () => {
    expect(states(comparison(both, [told('red', ['a', 'b'])]), 'a', 'b', 'c')).toEqual([
      'red a measured again',
      'red b measured again',
      'old c earlier',
    ]);
    expect(states(comparison(both, [told('red', ['a', 'b'])]), 'b')).toEqual([
      'red a missing',
      'red b measured again',
      'old c earlier',
    ]);
  });

  test('a unit of which nothing was told is shown all the same, and can’t be measured', () => {
    expect(states(comparison(both, []), 'a', 'b')).toEqual([
      'red a missing',
      'red b missing',
      'old c earlier',
    ]);
  });

  test('captures of steps count, whether a step was found in them or not', () => {
    const withSteps = [unit('red', ['a'], { steps: [{ file: 's' }] })];
    expect(states(comparison(withSteps, [told('red', ['a'], ['s', 't'])]), 'a', 't')).toEqual([
      'red a measured again',
      'red s missing',
      'red t measured again',
    ]);
    expect(states(comparison(withSteps, [told('red', ['a'])]), 'a', 's')).toEqual([
      'red a measured again',
      'red s missing',
    ]);
  });

  test('what was told of a unit that the result does not show is named too', () => {
    expect(states(comparison([], [told('red', ['a'])]), 'a')).toEqual(['red a measured again']);
  });
});

const assay = assays.goodSine!();
// In words already, as it may be: it only has to be another capture.
const strangers = [[{ ...assay, result: { ...assay.result, sha256: digestOf('x') } } as unknown as Assay]];
const messages = (evidence: Evidence, again = strangers): readonly string[] =>
  recheckCaptures(evidence, again).differences.map(({ message }) => message);

test('each unit whose captures are not there is named, where captures were brought', () => {
  const evidence = comparison([unit('red', ['a']), unit('blue', ['b'])], [told('red', ['a'])]);
  expect(messages(evidence).slice(0, 2)).toEqual([
    'red: not all of its captures are there to measure it again; missing: a.',
    'blue: not all of its captures are there to measure it again; missing: b.',
  ]);
  expect(messages(evidence, [])).toEqual([]);
});

test('a result that nothing was told of is a difference by itself', () => {
  const sweep = { picture: 'sweep', told: [], result: unit('blue', ['b']) } as unknown as Evidence;
  expect(messages(sweep)).toEqual([
    'blue: what the sheet shows of this unit and how its captures were measured don’t belong together.',
  ]);
});
