import { MeasureError } from '../../base/measureError.ts';
import { parseClaim } from '../../verdict/claims/parseClaim.ts';
import type { RatingClaim, UnitClaim } from './unitClaim.ts';

const RATINGS: readonly (readonly [word: RegExp, RatingClaim['quantity'], unit: RegExp, example: string])[] =
  [
    [/^(?:(?:continuous|rated) )?power\b/i, 'powerW', /^(k?)W$/i, 'power 600 W'],
    [/^(?:surge|peak)(?: power)?\b/i, 'surgeW', /^(k?)W$/i, 'surge 1200 W'],
    [/^capacity\b/i, 'capacityWh', /^(k?)Wh$/i, 'capacity 500 Wh'],
  ];

const WORD_FIRST = /^wave(?:form)?\b ?[:=]? ?/i;
const NUMBER = /^[ :=]*(\d+(?:[.,]\d+)?) ?(\p{L}+)$/u;

/**
 * A claim about a unit: `power 600 W`, `surge 1.2 kW`, `capacity 500 Wh`, or what one capture can show
 * (`wave: pure sine`, `120 V ±5 %`, `THD < 3 %`, `transfer < 20 ms`, …).
 *
 * @throws MeasureError `claim.grammar`.
 */
export function parseUnitClaim(text: string): UnitClaim {
  const plain = text.replaceAll(/\s+/g, ' ').trim();
  const rating = RATINGS.find(([word]) => word.test(plain));
  if (rating === undefined) return { ...parseClaim(plain.replace(WORD_FIRST, '')), text };
  const [word, quantity, unit, example] = rating;
  const [, digits = '', written = ''] = NUMBER.exec(plain.replace(word, '')) ?? [];
  const kilo = unit.exec(written);
  const value = Number(digits.replace(',', '.')) * (kilo?.[1] ? 1000 : 1);
  if (kilo === null || !(value > 0)) {
    throw new MeasureError('claim.grammar', `The claim "${text}" can't be understood.`, {
      expected: `a value with its unit, as in "${example}"`,
      received: text,
      advice: `Write for example: ${example}.`,
    });
  }
  return { text, quantity, rating: value };
}
