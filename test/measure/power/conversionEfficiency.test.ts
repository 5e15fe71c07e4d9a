import { expect, test } from 'vitest';
import { conversionEfficiency, quotientPercent } from '../../../src/measure/power/conversionEfficiency.ts';
import { numberOf, uncertaintyOf } from './figureNumbers.ts';

test('conversionEfficiency(out, in) is their quotient with both relative uncertainties', () => {
  const { efficiencyPercent, notices } = conversionEfficiency(
    { value: 270, uncertainty: 8.1 },
    { value: 300, uncertainty: 12 },
  );
  expect(Math.abs(numberOf(efficiencyPercent) - 90)).toBeLessThan(1e-12);
  // 3 % and 4 % make 5 %.
  expect(Math.abs(uncertaintyOf(efficiencyPercent) - 4.5)).toBeLessThan(1e-12);
  expect(notices).toEqual([]);
});

test('over 100 % beyond its uncertainty it is told as impossible; within, it stands', () => {
  const into = { value: 300, uncertainty: 3 };
  expect(conversionEfficiency({ value: 303, uncertainty: 3 }, into).notices).toEqual([]);
  const { notices } = conversionEfficiency({ value: 330, uncertainty: 3 }, into);
  expect(notices.map(({ code }) => code)).toEqual(['efficiency.impossible']);
});

test('quotientPercent(a, b) hands a missing figure on, and divides by nothing that may be zero', () => {
  const missing = { value: null, reason: 'not measured' };
  const ten = { value: 10, uncertainty: 1 };
  expect(quotientPercent(missing, ten)).toEqual(missing);
  expect(quotientPercent(ten, missing)).toEqual(missing);
  expect(quotientPercent(ten, { value: 0.5, uncertainty: 1 }).value).toBeNull();
  expect(quotientPercent(ten, { value: 0, uncertainty: 0 }).value).toBeNull();
});
