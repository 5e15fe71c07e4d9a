/** A rectangle on the page, px of the sheet's own coordinates, y downwards. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Measures of the page, px. */
export interface Page {
  readonly width: number;
  readonly height: number;
  /** Edges of what is printed. */
  readonly left: number;
  readonly right: number;
  readonly contentWidth: number;
  readonly columnWidth: number;
  /** Width of two columns with the gutter between them. */
  readonly twoColumns: number;
  /** Left edge of a column. */
  readonly columnX: (column: 0 | 1 | 2) => number;
}

const width = 1600;
const left = 56;
const gutter = 44;
const contentWidth = width - 2 * left;
const columnWidth = (contentWidth - 2 * gutter) / 3;

/** The page's grid: 16 to 9, three columns of equal width between even margins. */
export const page: Page = {
  width,
  height: 900,
  left,
  right: width - left,
  contentWidth,
  columnWidth,
  twoColumns: 2 * columnWidth + gutter,
  columnX: (column) => left + column * (columnWidth + gutter),
};
