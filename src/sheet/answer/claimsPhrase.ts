import type { ClaimResult } from '../../verdict/measureDocument.ts';
import { claimsVerdict } from './claimsVerdict.ts';
import { claimValueText } from './claimValueText.ts';
import { outcomeWords } from './outcomeWords.ts';
import { shortText } from './shortText.ts';

/**
 * How claims stand, as a clause: "“THD < 3 %” fails (5.2 %) and “60 Hz ±0.5 Hz” probably fails". What fails or probably
 * fails is always named, else what can't be judged or only probably holds, one or two by name and more by their number;
 * where all hold, a single one by its name, several by their number.
 *
 * @param told - what is said already: a value that stands there is not said again.
 * @returns empty without a claim.
 */
export function claimsPhrase(claims: readonly ClaimResult[], told = ''): string {
  const verdict = claimsVerdict(claims);
  if (verdict === null) return '';
  if (verdict.outcome === 'pass' && claims.length > 1) return `all ${claims.length} claims hold`;
  const failing = claims.filter(({ outcome }) => outcome === 'fail' || outcome === 'conditional fail');
  const [first] = verdict.claims;
  if (failing.length === 0 && verdict.claims.length > 2)
    return `${verdict.claims.length} of ${claims.length} claims ${first!.outcome === 'not judged' ? 'can’t be judged' : 'only probably hold'}`;
  const said = (failing.length === 0 ? verdict.claims : failing).map((claim) => claimPhrase(claim, told));
  const last = said.pop()!;
  return said.length === 0 ? last : `${said.join(', ')} and ${last}`;
}

function claimPhrase(claim: ClaimResult, told: string): string {
  const { value } = claimValueText(claim);
  const isPlain = claim.outcome === 'pass' || claim.outcome === 'not judged';
  // A kind of wave is named by what stands beside the phrase.
  const isTold = isPlain || typeof claim.value === 'string' || told.includes(value);
  return `${quoted(claim)} ${outcomeWords(claim.outcome)}${isTold ? '' : ` (${value})`}`;
}

/** A claim by its text: “pure sine”. */
export function quoted({ text }: Pick<ClaimResult, 'text'>): string {
  return `“${shortText(text, 60)}”`;
}
