import type { MissingFigure } from '../base/figure.ts';
import type { FactOf, NoFacts } from '../base/notice.ts';

/** Why a figure that a result alone has is missing. */
export type AssayReason = FactOf<AssayReasons>;

export interface AssayReasons {
  'groups.outOfReach': { order: number };
  'distortion.shortStretch': NoFacts;
}

/** A figure that can't be had from this record, and why. */
export function outOfReach(reason: AssayReason): MissingFigure {
  return { value: null, reason };
}
