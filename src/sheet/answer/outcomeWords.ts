import type { ClaimResult, Finding } from '../../verdict/measureDocument.ts';

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
