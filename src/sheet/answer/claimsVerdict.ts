import type { ClaimResult } from '../../verdict/measureDocument.ts';
import { worstClaims } from './worstClaims.ts';

/** How all claims together stand. */
export interface ClaimsVerdict {
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
