import { expect, test } from 'vitest';
import { MeasureError } from '../../src/base/measureError.ts';
import { benchUnit } from '../../src/bench/benchUnit.ts';
import { compareUnits } from '../../src/bench/compareUnits.ts';
import { readEarlier } from '../../src/bench/readEarlier.ts';
import { worded } from '../../src/words/worded.ts';
import { syntheticUnit } from './syntheticUnit.ts';

const unitAt = (rmsV: number) =>
  worded(
    benchUnit(
      syntheticUnit(
        [
          { loadW: 0, wave: { shape: 'sine', rmsV: 120 } },
          { loadW: 600, wave: { shape: 'sine', rmsV } },
        ],
        [],
      ),
    ),
  );
const documentOf = (...units: readonly unknown[]): string =>
  JSON.stringify({ schema: 'sineassay/bench@1', units, comparison: [], failures: [] });

test('a unit stands beside itself of an earlier day, written as JSON and read back', () => {
  const today = unitAt(116);
  const lastMonth = unitAt(118);
  const units = [today, ...readEarlier(documentOf(lastMonth), 'old/bench.json')];
  expect(units.map(({ earlier }) => earlier)).toEqual([undefined, 'old/bench.json']);
  const row = compareUnits(units).find(({ quantity }) => quantity === 'regulationPercent');
  expect(row?.figures).toEqual([today.regulation.regulationPercent, lastMonth.regulation.regulationPercent]);
});

test('one unit has nothing beside it; rows without a value are left out', () => {
  const unit = unitAt(116);
  expect(compareUnits([unit])).toEqual([]);
  const quantities = compareUnits([unit, unit]).map(({ quantity }) => quantity);
  expect(quantities).toContain('outputImpedanceOhm');
  expect(quantities).not.toContain('transferS');
});

test('what was an earlier result then is left where it is', () => {
  const old = { ...unitAt(118), earlier: 'older/bench.json' };
  expect(readEarlier(documentOf(old, unitAt(116)), 'b.json')).toHaveLength(1);
});

test.each([
  ['no JSON', 'V = 120', 'earlier.json'],
  ['results of single captures', '{"schema":"sineassay/measure@1","results":[]}', 'earlier.schema'],
  ['a unit without its figures', documentOf({ name: 'a', label: 'A' }), 'earlier.schema'],
  ['a figure that is none', documentOf({ ...unitAt(116), clipping: { atW: 'late' } }), 'earlier.schema'],
  ['a list', '[]', 'earlier.schema'],
])('%s is refused', (_, text, code) => {
  try {
    readEarlier(text, 'b.json');
  } catch (error) {
    expect(error).toBeInstanceOf(MeasureError);
    expect((error as MeasureError).code).toBe(code);
    return;
  }
  throw new Error('nothing was thrown');
});

test('a damaged figure of an earlier document is named by its place', () => {
  const { points, ...unit } = unitAt(116);
  const [first, ...others] = points;
  const text = documentOf(unitAt(118), { ...unit, points: [first, { ...others[0], rmsV: { value: 1 } }] });
  expect(() => readEarlier(text, 'b.json')).toThrow(
    expect.objectContaining({
      code: 'earlier.schema',
      facts: { found: { place: 'units.1.points.1.rmsV.uncertainty' } },
    }),
  );
});
