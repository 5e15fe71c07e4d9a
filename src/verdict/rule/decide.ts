import type { Figure } from '../../base/figure.ts';
import type { Limit, Outcome } from '../measureDocument.ts';
import { conformanceProbability } from './conformanceProbability.ts';
import { marginToLimit } from './marginToLimit.ts';

/** `guarded`: four outcomes, a guard band as wide as the uncertainty. `simple`: pass or fail by the value alone. */
export type DecisionRule = 'guarded' | 'simple';

export type Decision =
  | {
      readonly outcome: Outcome;
      /** That the true value is within the limit, 0 to 1. */
      readonly probability: number;
      /** Distance to the nearest limit in the figure's unit; negative outside. */
      readonly margin: number;
      /** Where the measured value lies, whatever the doubt; a value on the limit is inside. */
      readonly side: 'inside' | 'outside';
    }
  | {
      readonly outcome: 'not judged';
      readonly probability: null;
      readonly margin: null;
      readonly side: null;
    };

/**
 * How a figure stands against a limit.
 *
 * Guarded, guard band w = U: inside by more than w is a pass, inside by w or less a conditional pass,
 * outside by w or less a conditional fail, outside by more than w a fail. Without uncertainty there is no
 * guard band and nothing conditional. Simple: inside passes, outside fails.
 *
 * @param figure - value and expanded uncertainty U in the limit's unit.
 * @param limit - at least one side.
 * @returns `not judged` where the figure could not be measured.
 * @throws RangeError when the limit has no side, or its min is above its max.
 * @remarks A tolerance narrower than 2U can never be passed outright: that is the rule's intent.
 * @see ILAC-G8:09/2019, 4.2.3 "non-binary statement with guard band"; JCGM 106:2012, clauses 7 and 8
 * (clause numbers from memory).
 * @example decide({ value: 4.7, uncertainty: 0.4 }, { max: 5 }, 'guarded').outcome // 'conditional pass'
 */
export function decide(figure: Figure, limit: Limit, rule: DecisionRule): Decision {
  if (figure.value === null) return { outcome: 'not judged', probability: null, margin: null, side: null };
  const margin = marginToLimit(figure.value, limit);
  const inside = margin >= 0;
  const doubtful = rule === 'guarded' && figure.uncertainty > 0 && Math.abs(margin) <= figure.uncertainty;
  const plain = inside ? 'pass' : 'fail';
  return {
    outcome: doubtful ? `conditional ${plain}` : plain,
    probability: conformanceProbability(figure, limit),
    margin,
    side: inside ? 'inside' : 'outside',
  };
}
