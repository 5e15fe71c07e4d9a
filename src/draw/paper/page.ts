import { type Selection, select } from 'd3';
import { palette } from './palette.ts';
import type { Panel } from './writeText.ts';

/** A rectangle on the page, px of the sheet's own coordinates, y downwards. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Measures of the page, px. */
interface Page {
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

const svgNamespace = 'http://www.w3.org/2000/svg';

/** A page to draw on. */
interface OpenSheet {
  readonly svg: SVGSVGElement;
  /** A new group over what is drawn already. */
  readonly panel: () => Panel;
}

/**
 * An empty page of paper, 1600 × 900, named and described for whoever can't see it.
 *
 * @param document - a browser's, or jsdom's; only `createElementNS` and what d3 needs of it.
 * @param look - width that it is shown at (16 to 9, px, default 1600), and the colour of the paper.
 */
export function openSheet(
  document: Document,
  title: string,
  description: string,
  look: { readonly widthPx?: number; readonly paper?: string } = {},
): OpenSheet {
  const { widthPx = page.width, paper = palette.paper } = look;
  const svg = document.createElementNS(svgNamespace, 'svg');
  const root: Selection<SVGSVGElement, unknown, null, undefined> = select(svg)
    .attr('viewBox', `0 0 ${page.width} ${page.height}`)
    .attr('width', widthPx)
    .attr('height', (widthPx * page.height) / page.width)
    .attr('role', 'img')
    .attr('lang', 'en')
    .attr('font-family', "'Source Sans 3', 'Source Sans Pro', 'Helvetica Neue', Arial, sans-serif");
  root.append('title').text(title);
  root.append('desc').text(description);
  root.append('rect').attr('width', page.width).attr('height', page.height).attr('fill', paper);
  return { svg, panel: () => root.append('g') };
}

/** A rectangle that something on the sheet takes up, px, y downwards. */
export interface Room {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** True where two rectangles share more than a line. */
export function overlaps(a: Room, b: Room): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/** How a line is drawn. */
interface Stroke {
  readonly ink: string;
  readonly widthPx: number;
  /** Lengths of dashes and gaps, px: `7 4`; absent: an unbroken line. */
  readonly dash?: string;
}

/** Draws a path as a line, without filling it. */
export function strokePath(panel: Panel, d: string, { ink, widthPx, dash }: Stroke): void {
  const path = panel.append('path').attr('d', d).attr('fill', 'none').attr('stroke', ink);
  path.attr('stroke-width', widthPx);
  if (dash !== undefined) path.attr('stroke-dasharray', dash);
}

/**
 * Moves positions apart so that neighbours keep a distance, each near where it was wished and in the same order.
 *
 * @param wished - px, any order.
 * @param distance - least, px.
 * @param bounds - lowest and highest position allowed; where they are too close, the highest gives way.
 * @returns positions in the order of `wished`.
 */
export function spreadOut(
  wished: readonly number[],
  distance: number,
  [low, high]: readonly [number, number],
): number[] {
  const order = [...wished.keys()].sort((a, b) => wished[a]! - wished[b]!);
  const spread = order.map((index) => Math.max(low, wished[index]!));
  for (let i = spread.length - 1, limit = high; i >= 0; i--, limit -= distance) {
    spread[i] = Math.min(spread[i]!, limit);
  }
  for (let i = 0, limit = low; i < spread.length; i++) {
    spread[i] = Math.max(spread[i]!, limit);
    limit = spread[i]! + distance;
  }
  const positions = [...wished];
  order.forEach((index, i) => {
    positions[index] = spread[i]!;
  });
  return positions;
}
