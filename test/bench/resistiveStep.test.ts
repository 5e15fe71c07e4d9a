import { expect, test } from 'vitest';
import { parseUnitClaim } from '../../src/bench/claims/parseUnitClaim.ts';
import { isResistiveFullStep } from '../../src/bench/measuredUnit.ts';

const rated = [parseUnitClaim('pure sine'), parseUnitClaim('power 600 W')];

test.each([
  ['from nothing to the rating', { fromW: 0, toW: 600, resistive: true }, true],
  ['and back', { fromW: 600, toW: 0, resistive: true }, true],
  ['a heater that takes 4 % less', { fromW: 0, toW: 576, resistive: true }, true],
  ['to half', { fromW: 0, toW: 300, resistive: true }, false],
  ['to an overload', { fromW: 0, toW: 900, resistive: true }, false],
  ['from a load', { fromW: 60, toW: 600, resistive: true }, false],
  ['a load of another kind', { fromW: 0, toW: 600, resistive: false }, false],
  ['of no told kind', { fromW: 0, toW: 600, resistive: null }, false],
  ['from where is not told', { fromW: null, toW: 600, resistive: true }, false],
])('a full resistive step: %s', (_, told, is) => {
  expect(isResistiveFullStep(told, rated)).toBe(is);
});

test('without a rating no step is a full one', () => {
  expect(isResistiveFullStep({ fromW: 0, toW: 600, resistive: true }, [])).toBe(false);
});
