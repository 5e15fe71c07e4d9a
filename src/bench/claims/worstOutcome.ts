import type { ClaimResult } from '../../verdict/measureDocument.ts';

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
