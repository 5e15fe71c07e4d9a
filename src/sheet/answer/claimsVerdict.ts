import type { ClaimResult } from '../../verdict/measureDocument.ts';

/** How all claims together stand: as the worst of them does. */
export type ClaimsVerdict = ClaimResult['outcome'];

const worstFirst: readonly ClaimsVerdict[] = [
  'fail',
  'conditional fail',
  'not judged',
  'conditional pass',
  'pass',
];

/** The worst outcome among claims and the claims that share it; null where there is no claim. */
export function claimsVerdict(
  claims: readonly ClaimResult[],
): { readonly outcome: ClaimsVerdict; readonly claims: readonly ClaimResult[] } | null {
  for (const outcome of worstFirst) {
    const sharing = claims.filter((claim) => claim.outcome === outcome);
    if (sharing.length > 0) return { outcome, claims: sharing };
  }
  return null;
}
