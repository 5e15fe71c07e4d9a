import type { ClaimResult } from '../../verdict/measureDocument.ts';
import { besideLimit } from '../numbers/besideLimit.ts';
import { quantityParts } from '../numbers/quantityParts.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { outcomeWords } from './outcomeWords.ts';
import { shortText } from './shortText.ts';

/** Every claim with its outcome: "“pure sine” holds; “THD < 3 %” fails (5.2 %)." */
export function claimsSentence(claims: readonly ClaimResult[]): string {
  const said = claims.map((claim) => {
    const found = claim.outcome === 'pass' ? '' : ` (${foundText(claim)})`;
    return `“${shortText(claim.text, 40)}” ${outcomeWords(claim.outcome)}${found}`;
  });
  return `${said.join('; ')}.`;
}

/** The value alone: the claim before it says of what. */
function foundText({ value, limit, quantity, reason }: ClaimResult): string {
  if (value === null) return reason ?? 'nothing measured';
  if (typeof value === 'string') return value;
  return withUnit(besideLimit(value, limit ?? {}), quantityParts(quantity).unit);
}
