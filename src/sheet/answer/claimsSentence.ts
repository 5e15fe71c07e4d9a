import type { ClaimResult } from '../../verdict/measureDocument.ts';
import { claimValueText } from './claimValueText.ts';
import { outcomeWords } from './outcomeWords.ts';
import { shortText } from './shortText.ts';

/** Every claim with its outcome: "“pure sine” holds; “THD < 3 %” fails (5.2 %)." */
export function claimsSentence(claims: readonly ClaimResult[]): string {
  const said = claims.map((claim) => {
    const isPlain = claim.outcome === 'pass' || claim.value === claim.text;
    const found = isPlain ? '' : ` (${claimValueText(claim).value})`;
    return `“${shortText(claim.text, 40)}” ${outcomeWords(claim.outcome)}${found}`;
  });
  return `${said.join('; ')}.`;
}
