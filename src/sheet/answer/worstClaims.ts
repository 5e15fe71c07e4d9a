import type { ClaimResult } from '../../verdict/measureDocument.ts';

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
