import type { MeasuredFigure } from '../../base/figure.ts';

/** One figure of all units on one scale, a row a unit. */
export interface DotColumn {
  readonly heading: string;
  readonly aside: string;
  readonly unit: string;
  /** A row a unit, in their order. */
  readonly rows: readonly DotRow[];
  /** Named by the aside. */
  readonly limits: readonly number[];
  /** What the scale shows at the least. */
  readonly least: readonly [number, number];
  /** Of the room that the columns share. */
  readonly share: number;
}

export interface DotRow {
  /** Without load: hollow, drawn above. */
  readonly noLoad: MeasuredFigure | null;
  /** At full load, or the only figure: filled. */
  readonly fullLoad: MeasuredFigure | null;
  /** The figures in text, written under the dots. */
  readonly text: string;
}
