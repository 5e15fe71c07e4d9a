import type { BenchClaim } from '../../../bench/benchDocument.ts';
import { decimalText } from '../../numbers/decimalText.ts';
import { claimValueText } from '../claimValueText.ts';
import { outcomeWords } from '../outcomeWords.ts';
import { shortText } from '../shortText.ts';

/** Every claim with its outcome and, unless it holds, its worst case: "“THD < 3 %” fails (5.2 % at 600 W)." */
export function benchClaimsSentence(claims: readonly BenchClaim[]): string {
  return `${claims.map((claim) => `“${shortText(claim.text, 40)}” ${outcomeWords(claim.outcome)}${found(claim)}`).join('; ')}.`;
}

function found(claim: BenchClaim): string {
  if (claim.outcome === 'pass') return '';
  // How long it was seen is a part of the outcome: "probably holds: 0.2 s seen (118.0 V at 600 W)".
  const [seen, more] = claim.reason?.split('; ') ?? [];
  if (claim.outcome === 'conditional pass' && seen?.endsWith(' seen')) return `: ${seen} (${more})`;
  if (claim.reason !== undefined) return ` (${claim.reason})`;
  const load = claim.worstLoadW === null ? '' : ` at ${decimalText(claim.worstLoadW, 0)} W`;
  return ` (${claimValueText(claim).value}${load})`;
}
