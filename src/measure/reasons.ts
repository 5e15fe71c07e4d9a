import type { MissingFigure } from '../base/figure.ts';
import type { FactOf, NoFacts } from '../base/notice.ts';

/** Why a figure of a capture can't be measured. */
export type MeasureReason = FactOf<MeasureReasons>;

export interface MeasureReasons {
  /** `of`: what the record holds instead of a wave. */
  'wave.repeatsNot': { of: 'noise' | 'brief' | 'constant' | 'direct' };
  'wave.noEdges': NoFacts;
  'wave.noWholeEdge': NoFacts;
  'wave.restsNot': NoFacts;
  'mean.blocked': NoFacts;
  'mean.zero': NoFacts;
  'current.noFundamental': NoFacts;
  'quotient.byNothing': NoFacts;
  'frequency.fewCycles': NoFacts;
  'break.shortSide': NoFacts;
  'bursts.one': NoFacts;
  'voltage.notBack': NoFacts;
  'voltage.notSettled': NoFacts;
  'nominal.unknown': NoFacts;
  'digitiser.edges': NoFacts;
  'digitiser.noCurve': NoFacts;
  'digitiser.ownLines': NoFacts;
}

/** A figure that can't be measured, and why. */
export function missing(reason: MeasureReason): MissingFigure {
  return { value: null, reason };
}
