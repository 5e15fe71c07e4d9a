import type { Reason } from './notice.ts';

/** A measured number with its expanded uncertainty, or the reason why there is none: as data, or as a document says it. */
export type Figure<Why = Reason> = MeasuredFigure | MissingFigure<Why>;

export interface MeasuredFigure {
  /** Finite, in the unit that the figure's key names. */
  readonly value: number;
  /** Half-width of the interval that covers 95.45 %, same unit, finite and not negative. */
  readonly uncertainty: number;
  /** For a figure below what the instrument can resolve: what it is at most, about 95 % sure. */
  readonly notAbove?: number;
}

export interface MissingFigure<Why = Reason> {
  readonly value: null;
  /** Why it can't be measured. */
  readonly reason: Why;
}
