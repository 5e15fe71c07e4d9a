import { type Selection, select } from 'd3';
import { page } from './page.ts';
import { palette } from './palette.ts';
import type { Panel } from './writeText.ts';

const svgNamespace = 'http://www.w3.org/2000/svg';

/** A page to draw on. */
export interface OpenSheet {
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
