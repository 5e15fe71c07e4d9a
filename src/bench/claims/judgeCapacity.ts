import { decide } from '../../verdict/rule/decide.ts';
import type { BenchClaim } from '../benchDocument.ts';
import { DECENT_USABLE_SHARE_PERCENT } from '../energy/decentUsableShare.ts';
import type { RatingClaim } from './unitClaim.ts';
import type { UnitEvidence } from './unitEvidence.ts';

/**
 * Whether the capacity is there: the worst run's energy at the DC side, against the share of the rating that is
 * taken as decent. The energy at the outlet can't tell, for it has paid the inverter's losses.
 */
export function judgeCapacity(
  { text, quantity, rating }: RatingClaim,
  { energy, rule }: Pick<UnitEvidence, 'energy' | 'rule'>,
): BenchClaim {
  const [worst] = energy
    .flatMap(({ dcWh }) => (dcWh.value === null ? [] : [dcWh]))
    .sort((a, b) => a.value - b.value);
  const limit = { min: (DECENT_USABLE_SHARE_PERCENT / 100) * rating };
  const known = { text, quantity, limit, worstFile: null, worstLoadW: null };
  if (worst === undefined) {
    const reason = 'no energy was measured at the DC side';
    return { ...known, value: null, outcome: 'not judged', probability: null, reason };
  }
  const { outcome, probability } = decide(worst, limit, rule);
  const share = ((100 * worst.value) / rating).toFixed(0);
  return {
    ...known,
    ...{ value: worst.value, outcome, probability },
    reason: `${share} % of the rating can be used; ${DECENT_USABLE_SHARE_PERCENT} % and up is taken as decent, common practice`,
  };
}
