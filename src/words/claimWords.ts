import type { ClaimResult } from '../judge/claims/claim.ts';
import { outletQuantities, unitQuantities } from '../judge/claims/claimedQuantities.ts';
import type { Limit } from '../judge/decide.ts';
import type { Finding } from '../judge/limits/findings.ts';
import { withUnit } from './numbers.ts';
import { besideLimit } from './quantities.ts';
import { reasonText } from './reasons.ts';
import { shortText } from './text.ts';

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

/** Every claim with its outcome: "“pure sine” holds; “THD < 3 %” fails (5.2 %)." */
export function claimsSentence(claims: readonly ClaimResult[]): string {
  const said = claims.map((claim) => {
    const isPlain = claim.outcome === 'pass' || claim.value === claim.text;
    const found = isPlain ? '' : ` (${claimValueText(claim).value})`;
    return `“${shortText(claim.text, 40)}” ${outcomeWords(claim.outcome)}${found}`;
  });
  return `${said.join('; ')}.`;
}

/** How all claims together stand. */
interface ClaimsVerdict {
  /** The worst among them. */
  readonly outcome: ClaimResult['outcome'];
  /** Those that share it, one at least. */
  readonly claims: readonly ClaimResult[];
}

/** Claims stand together as the worst of them does; null where there is no claim. */
export function claimsVerdict(claims: readonly ClaimResult[]): ClaimsVerdict | null {
  const [worst] = worstClaims(claims);
  if (worst === undefined) return null;
  const { outcome } = worst;
  return { outcome, claims: claims.filter((claim) => claim.outcome === outcome) };
}

/** A claim names its quantity by its key in the document. */
const quantities: Readonly<Record<string, { readonly name: string; readonly unit: string }>> = {
  ...outletQuantities,
  ...unitQuantities,
};

/** What was found for a claim. */
interface ClaimValue {
  /** "109.2 V", "distorted sine", or why there is nothing to judge. */
  readonly value: string;
  /** The same with its name: "RMS voltage 109.2 V". */
  readonly named: string;
}

/** Puts what was found for a claim into words. */
export function claimValueText({
  text: claimed,
  value,
  quantity,
  limit,
  outcome,
  reason,
}: ClaimResult): ClaimValue {
  if (value === null || outcome === 'not judged') {
    const why = reason === undefined ? 'nothing measured' : reasonText(reason);
    return { value: why, named: why };
  }
  // What became of a load tells more than its watts.
  if (reason !== undefined && (quantity === 'powerW' || quantity === 'surgeW'))
    return { value: reasonText(reason), named: reasonText(reason) };
  if (typeof value === 'string') return { value, named: value };
  const { name, unit } = quantities[quantity] ?? { name: quantity, unit: '' };
  const found =
    unit === 's' ? timeText(value, limit ?? {}, claimed) : withUnit(besideLimit(value, limit ?? {}), unit);
  return { value: found, named: `${name} ${found}` };
}

/** A time in the unit that it was claimed in. */
function timeText(valueS: number, limit: Limit, claimed: string): string {
  if (!/\d\s*ms\b/i.test(claimed)) return withUnit(besideLimit(valueS, limit), 's');
  const inMs = (seconds: number): number => Number((1000 * seconds).toPrecision(12));
  const { min, max } = limit;
  const limitMs = {
    ...(min !== undefined && { min: inMs(min) }),
    ...(max !== undefined && { max: inMs(max) }),
  };
  return withUnit(besideLimit(1000 * valueS, limitMs), 'ms');
}

const words = {
  pass: 'holds',
  'conditional pass': 'probably holds',
  'conditional fail': 'probably fails',
  fail: 'fails',
  information: 'information',
  'not judged': 'can’t be judged',
} as const satisfies Record<ClaimResult['outcome'] | Finding['outcome'], string>;

/** An outcome as it reads on a sheet and in the terminal; a claim or a limit is its subject. */
export function outcomeWords(outcome: ClaimResult['outcome'] | Finding['outcome']): string {
  return words[outcome];
}

const worstFirst: readonly ClaimResult['outcome'][] = [
  'fail',
  'conditional fail',
  'not judged',
  'conditional pass',
  'pass',
];

/** Claims, worst outcome first; those of one outcome keep their order. */
export function worstClaims(claims: readonly ClaimResult[]): ClaimResult[] {
  return [...claims].sort((a, b) => worstFirst.indexOf(a.outcome) - worstFirst.indexOf(b.outcome));
}
