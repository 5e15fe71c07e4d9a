import { expect, test } from 'vitest';
import type { NamedBudget } from '../../../src/assay/assay.ts';
import { type Comparand, compareCaptures } from '../../../src/bench/compare/compareCaptures.ts';
import { budgeted } from '../../../src/measure/doubt/budget.ts';
import { within } from '../../../src/measure/doubt/component.ts';
import { waveAssay } from '../../fixtures/waveAssay.ts';

/** A sine's capture whose gain is off by up to 3 %, that being all that its figures are doubted by. */
function taken(peak: number, named: string): Comparand {
  const { result } = waveAssay((turn) => peak * Math.sin(2 * Math.PI * turn));
  const budgetOf = (key: NamedBudget['key'], value: number): NamedBudget => ({
    ...{ key, figure: named, unit: 'V' },
    ...budgeted(value, [within('vertical gain', 3, '%', value / 100)]),
  });
  const { rmsV, thdNoisePercent } = result.voltage!;
  return {
    result,
    budgets: [budgetOf('rms', rmsV.value!), budgetOf('thdNoisePercent', thdNoisePercent.value!)],
  };
}

const { differences } = compareCaptures(taken(150, 'in one tongue'), taken(170, 'in another'), {
  sameInstrument: true,
});
const differenceOf = (key: string) => differences.find((difference) => difference.key === key)!.difference;

test('a figure finds its budget by its key, whatever it is called', () => {
  // One unknown gain in both: 95.45 % of a rectangle of ±3 % of the difference, not of either.
  expect(differenceOf('voltage.rmsV')).toEqual({
    value: expect.closeTo(20 / Math.SQRT2, 9),
    uncertainty: expect.closeTo((0.9545 * 0.03 * 20) / Math.SQRT2, 3),
  });
});

test('what scatters from capture to capture by more than its budget has is compared by its whole uncertainty', () => {
  // Either side ± 0.42 in the fixture; two rectangles' sum takes up to 1.17 times their hypotenuse.
  expect(differenceOf('voltage.thdNoisePercent')).toMatchObject({
    uncertainty: expect.closeTo(1.17 * Math.SQRT2 * 0.42, 9),
  });
});
