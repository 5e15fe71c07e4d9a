import type { MissingFigure } from '../base/figure.ts';
import type { FactOf, NoFacts } from '../base/notice.ts';

/** Why something can't be held against a limit or a claim. */
export type JudgeReason = FactOf<JudgeReasons>;

export interface JudgeReasons {
  'limit.noNominal': NoFacts;
  'claim.noTransfer': NoFacts;
  /** `example`: how a claim of that quantity may be written. */
  'claim.valueAlone': { example: string };
  /** `percent`: of the samples that lie beyond the scope's range. */
  'channel.cutOff': { percent: number };
  'output.notStarted': NoFacts;
  'piece.short': { cycles: number };
  'wave.kindUntold': NoFacts;
}

/** A figure that there is nothing to hold against, and why. */
export function notJudgeable(reason: JudgeReason): MissingFigure {
  return { value: null, reason };
}
