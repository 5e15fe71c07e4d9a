import type { Panel } from './writeText.ts';

/** How a line is drawn. */
export interface Stroke {
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
