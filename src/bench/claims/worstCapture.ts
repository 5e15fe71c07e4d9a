import type { Claim } from '../../verdict/claims/claim.ts';
import type { ClaimResult } from '../../verdict/measureDocument.ts';
import type { BenchClaim } from '../benchDocument.ts';
import { worstOutcome } from './worstOutcome.ts';

/** The claims that one capture judged. */
export interface JudgedCapture {
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
