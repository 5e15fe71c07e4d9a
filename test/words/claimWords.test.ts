import { expect, test } from 'vitest';
import type { Worded } from '../../src/base/notice.ts';
import type { ClaimResult } from '../../src/judge/claims/claim.ts';
import { outletQuantities, unitQuantities } from '../../src/judge/claims/claimedQuantities.ts';
import { claimValueText } from '../../src/words/claimWords.ts';

const found = (quantity: string): Worded<ClaimResult> => ({
  ...{ text: 'claimed', quantity, value: 640, limit: { min: 500 }, outcome: 'pass', probability: 1 },
});

test('what was found for a claim has its name and unit, that of a battery too', () => {
  expect(claimValueText(found('capacityWh'))).toEqual({
    value: '640.0\u00a0Wh',
    named: 'capacity 640.0\u00a0Wh',
  });
  const every = { ...outletQuantities, ...unitQuantities };
  for (const [quantity, { name, unit }] of Object.entries(every)) {
    const { value, named } = claimValueText(found(quantity));
    expect(named).toBe(`${name} ${value}`);
    // A time is said in the unit that it was claimed in.
    expect(value.endsWith(unit)).toBe(true);
  }
});
