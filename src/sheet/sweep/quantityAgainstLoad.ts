import type { MeasuredFigure } from '../../base/figure.ts';

/** One quantity of a sweep, ready to draw. */
export interface QuantityAgainstLoad {
  readonly name: string;
  /** What the reader needs to know of its bars. */
  readonly aside: string;
  /** Empty for a ratio. */
  readonly unit: string;
  readonly points: readonly LoadPoint[];
  readonly limits: readonly LimitLine[];
  /** Where the line through the points leaves its limits; null: nowhere. */
  readonly exit: { readonly loadW: number; readonly name: string } | null;
  /** A level to read the points against, no limit: nominal, a sine's crest factor. */
  readonly level: { readonly value: number; readonly name: string } | null;
}

export interface LoadPoint {
  readonly loadW: number;
  readonly figure: MeasuredFigure;
  /** The part of the uncertainty that differs from capture to capture, where it is known. */
  readonly scatter: number | null;
  readonly overload: boolean;
  /** True where the output was lost under this load: beside the line through the others. */
  readonly isLost: boolean;
}

/** A limit as a level line. */
export interface LimitLine {
  readonly value: number;
  /** On which side values are outside. */
  readonly side: 'max' | 'min';
  readonly name: string;
}
