import { decide } from '../../verdict/rule/decide.ts';
import type { BenchClaim } from '../benchDocument.ts';
import type { EfficiencyClaim } from './unitClaim.ts';
import type { UnitEvidence } from './unitEvidence.ts';

/**
 * Whether what is claimed of the battery's energy reaches the outlet: the discharge that does worst decides. The share
 * of the rating that reaches the outlet is another ratio and can't tell.
 */
export function judgeEfficiency(
  { text, quantity, limit }: EfficiencyClaim,
  { energy, rule }: Pick<UnitEvidence, 'energy' | 'rule'>,
): BenchClaim {
  const known = { text, quantity, limit, worstFile: null, worstLoadW: null };
  const [worst] = energy
    .map(({ conversionEfficiencyPercent }) => conversionEfficiencyPercent)
    .flatMap((figure) => (figure.value === null ? [] : [figure]))
    .map((figure) => ({ figure, decision: decide(figure, limit, rule) }))
    .sort((a, b) => (a.decision.probability ?? 1) - (b.decision.probability ?? 1));
  if (worst === undefined) {
    const reason = 'no discharge was measured at both the DC side and the AC outlet';
    return { ...known, value: null, outcome: 'not judged', probability: null, reason };
  }
  const { outcome, probability } = worst.decision;
  return { ...known, value: worst.figure.value, outcome, probability };
}
