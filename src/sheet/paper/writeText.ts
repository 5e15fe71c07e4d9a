import type { Selection } from 'd3';
import { palette } from './palette.ts';
import type { TextWeight } from './textWeight.ts';
import { textWidth } from './textWidth.ts';

/** A group of the sheet to draw into. */
export type Panel = Selection<SVGGElement, unknown, null, undefined>;

export interface TextStyle {
  readonly sizePx: number;
  readonly weight?: TextWeight;
  readonly ink?: string;
  readonly anchor?: 'start' | 'middle' | 'end';
}

/**
 * Writes one line of text at a baseline.
 *
 * @remarks `textLength` holds the line to its measured width, so that a reader without the typeface sees a
 * slightly squeezed substitute and never a line that runs into its neighbour.
 */
export function writeText(panel: Panel, text: string, x: number, y: number, style: TextStyle): void {
  if (text === '') return;
  const { sizePx, weight = 400, ink = palette.ink, anchor = 'start' } = style;
  const element = panel
    .append('text')
    .attr('x', rounded(x))
    .attr('y', rounded(y))
    .attr('font-size', sizePx)
    .attr('fill', ink)
    .attr('textLength', rounded(textWidth(text, sizePx, weight)))
    .attr('lengthAdjust', 'spacingAndGlyphs');
  if (weight !== 400) element.attr('font-weight', weight);
  if (anchor !== 'start') element.attr('text-anchor', anchor);
  element.text(text);
}

function rounded(px: number): number {
  return Math.round(px * 100) / 100;
}
