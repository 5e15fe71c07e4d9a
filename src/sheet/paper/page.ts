/** A rectangle on the page, px of the sheet's own coordinates, y downwards. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const left = 56;
const gutter = 44;
const columnWidth = (1600 - 2 * left - 2 * gutter) / 3;

/** The page's grid: 16 to 9, three columns of equal width between even margins. */
export const page = {
  width: 1600,
  height: 900,
  left,
  right: 1600 - left,
  contentWidth: 1600 - 2 * left,
  columnWidth,
  /** Left edge of column 0, 1 or 2. */
  columnX: (column: 0 | 1 | 2): number => left + column * (columnWidth + gutter),
  /** Width of two columns with the gutter between them. */
  twoColumns: 2 * columnWidth + gutter,
} as const;
