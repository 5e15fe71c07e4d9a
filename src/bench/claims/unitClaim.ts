import type { Claim, ClaimResult } from '../../judge/claims/claim.ts';
import type { UnitQuantity } from '../../judge/claims/claimedQuantities.ts';
import type { DecisionRule, Limit } from '../../judge/decide.ts';
import type { BenchClaim, BenchTransfer, EnergyRun, VoltageRange } from '../benchDocument.ts';
import type { ShownLoad } from '../shownLoad.ts';

/** What a maker says of a unit: of its outlet, as one capture can show it, or a rating that takes several. */
export type UnitClaim = Claim | RatingClaim | EfficiencyClaim;

export interface RatingClaim {
  /** As given. */
  readonly text: string;
  /** Continuous power, power for a short while, energy of the battery. */
  readonly quantity: Exclude<UnitQuantity, 'conversionEfficiencyPercent'>;
  /** In the quantity's unit, > 0. */
  readonly rating: number;
  /** For how long a surge is meant to be carried, s, > 0; absent: not told. */
  readonly forS?: number;
}

/** What of the battery's energy reaches the outlet. */
export interface EfficiencyClaim {
  /** As given. */
  readonly text: string;
  readonly quantity: 'conversionEfficiencyPercent';
  /** In %. */
  readonly limit: Limit;
}

/** Whether a claim is a rating of the unit. */
export function isRating(claim: UnitClaim): claim is RatingClaim {
  return 'rating' in claim;
}

/** Whether single captures of the outlet can judge a claim. */
export function isOfOutlet(claim: UnitClaim): claim is Claim {
  return !isRating(claim) && claim.quantity !== 'conversionEfficiencyPercent';
}

/** What all captures of a unit show, for judging its claims by. */
export interface UnitEvidence {
  /** Of captures at a steady load and of load steps. */
  readonly loads: readonly ShownLoad[];
  readonly transfers: readonly BenchTransfer[];
  readonly energy: readonly EnergyRun[];
  /** The claims that single captures judge: those of the sweep up to the rated load, and of transfers. */
  readonly judged: readonly JudgedCapture[];
  readonly range: VoltageRange | null;
  readonly rule: DecisionRule;
}

/** The claims that one capture judged. */
interface JudgedCapture {
  readonly file: string;
  /** Null: not known. */
  readonly loadW: number | null;
  readonly claims: readonly ClaimResult[];
}

/**
 * A claim on the capture where it stands worst; of several of one outcome, where it is least probable, then at
 * the highest load.
 *
 * @returns `not judged` where no capture can tell.
 */
export function worstCapture({ text, quantity }: Claim, captures: readonly JudgedCapture[]): BenchClaim {
  const judged = captures.flatMap(({ file, loadW, claims }) =>
    claims.filter((claim) => claim.text === text).map((claim) => ({ file, loadW, claim })),
  );
  const outcome = worstOutcome(judged.map(({ claim }) => claim.outcome));
  const [worst] = judged
    .filter(({ claim }) => claim.outcome === outcome)
    .sort((a, b) => probability(a.claim) - probability(b.claim) || (b.loadW ?? 0) - (a.loadW ?? 0));
  if (worst === undefined) {
    const reason = quantity === 'transferS' ? 'no capture of a transfer' : 'no capture at the claimed loads';
    return {
      ...{ text, quantity, value: null, limit: null, outcome: 'not judged', probability: null, reason },
      ...{ worstFile: null, worstLoadW: null },
    };
  }
  return { ...worst.claim, worstFile: worst.file, worstLoadW: worst.loadW };
}

/** Where none was computed the outcome stands alone: as good as any. */
function probability(claim: ClaimResult): number {
  return claim.probability ?? 1;
}

type Outcome = ClaimResult['outcome'];

const WORST_FIRST: readonly Outcome[] = [
  'fail',
  'conditional fail',
  'not judged',
  'conditional pass',
  'pass',
];

/** Several outcomes stand together as the worst of them does; null where there is none. */
export function worstOutcome(outcomes: readonly Outcome[]): Outcome | null {
  return WORST_FIRST.find((outcome) => outcomes.includes(outcome)) ?? null;
}
