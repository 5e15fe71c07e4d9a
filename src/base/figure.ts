/** A measured number with its expanded uncertainty, or the reason why there is none. */
export type Figure = MeasuredFigure | MissingFigure;

export interface MeasuredFigure {
  /** Finite, in the unit that the figure's key names. */
  readonly value: number;
  /** Half-width of the interval that covers 95.45 %, same unit, finite and not negative. */
  readonly uncertainty: number;
  /** For a figure below what the instrument can resolve: what it is at most, about 95 % sure. */
  readonly notAbove?: number;
}

interface MissingFigure {
  readonly value: null;
  /** Why it can't be measured, in words. */
  readonly reason: string;
}
