import type { Claim } from '../../judge/claims/claim.ts';
import { unitQuantities, unitQuantityIn } from '../../judge/claims/claimedQuantities.ts';
import { claimedNominal } from '../../judge/claims/judgeClaim.ts';
import { normaliseClaim, parseClaim, parseRange } from '../../judge/claims/parseClaim.ts';
import type { ToldNominal } from '../../judge/nominal/mainsNominals.ts';
import { benchError } from '../benchErrors.ts';
import { type EfficiencyClaim, isOfOutlet, type UnitClaim } from './unitClaim.ts';

const WORD_FIRST = /^wave(?:form)?\b ?[:=]? ?/i;
const NUMBER = /^[ :=]*(\d+(?:[.,]\d+)?) ?(\p{L}+)$/u;
/** For how long a surge is carried: "for 5 s", "for 200 ms". */
const FOR = / for (\d+(?:[.,]\d+)?) ?(ms|s(?:ec(?:onds?)?)?|min(?:utes?)?)$/i;

/**
 * A claim about a unit: `power 600 W`, `surge 1.2 kW`, `surge 2000 W for 5 s`, `capacity 500 Wh`, `efficiency > 85 %`,
 * or what one capture can show
 * (`wave: pure sine`, `120 V ±5 %`, `THD < 3 %`, `transfer < 20 ms`, …).
 *
 * @throws MeasureError `claim.grammar`.
 */
export function parseUnitClaim(text: string): UnitClaim {
  const plain = text.replaceAll(/\s+/g, ' ').trim();
  const quantity = unitQuantityIn(plain);
  if (quantity === undefined) return { ...parseClaim(plain.replace(WORD_FIRST, '')), text };
  const {
    word,
    unit,
    examples: [example],
  } = unitQuantities[quantity];
  if (quantity === 'conversionEfficiencyPercent') return efficiencyClaim(text, plain.replace(word, ''));
  const lasting = quantity === 'surgeW' ? FOR.exec(plain) : null;
  const worded = lasting === null ? plain : plain.slice(0, lasting.index);
  const [, digits = '', written = ''] = NUMBER.exec(worded.replace(word, '')) ?? [];
  const kilo = new RegExp(`^(k?)${unit}$`, 'i').exec(written);
  const value = Number(digits.replace(',', '.')) * (kilo?.[1] ? 1000 : 1);
  const forS = lasting === null ? null : secondsOf(lasting);
  if (kilo === null || !(value > 0) || forS === 0) {
    throw benchError('claim.grammar.rating', { text, example });
  }
  return { text, quantity, rating: value, ...(forS === null ? {} : { forS }) };
}

function efficiencyClaim(text: string, amount: string): EfficiencyClaim {
  const numbers = normaliseClaim(amount)
    .replace(/^[:=] ?/, '')
    .replace(/^(?:at least|over|above|from) /i, '>= ');
  const { limit, unit, target } = parseRange(numbers, text);
  const isShare = unit === '%' && [limit?.min, limit?.max].every((end = 1) => end > 0 && end <= 100);
  if (limit === null || target !== null || !isShare) {
    const [example] = unitQuantities.conversionEfficiencyPercent.examples;
    throw benchError('claim.grammar.efficiency', { text, example });
  }
  return { text, quantity: 'conversionEfficiencyPercent', limit };
}

function secondsOf([, digits = '', unit = '']: RegExpExecArray): number {
  const value = Number(digits.replace(',', '.'));
  return /^m(?!s)/i.test(unit) ? 60 * value : /^ms/i.test(unit) ? value / 1000 : value;
}

/** The claims of a unit that single captures judge, by the captures that can. */
interface OutletClaims {
  readonly sweep: readonly Claim[];
  readonly transfers: readonly Claim[];
  /** What they say the outlet is meant to give. */
  readonly nominal: ToldNominal;
}

/** Which of a unit's claims go to which of its captures; ratings go to none. */
export function outletClaims(claims: readonly UnitClaim[]): OutletClaims {
  const outlet = claims.filter(isOfOutlet);
  return {
    sweep: outlet.filter(({ quantity }) => quantity !== 'transferS'),
    transfers: outlet.filter(({ quantity }) => quantity === 'transferS'),
    nominal: claimedNominal(outlet),
  };
}
