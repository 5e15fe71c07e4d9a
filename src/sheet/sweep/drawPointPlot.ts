import type { ScaleLinear } from 'd3';
import { scaleLinear } from 'd3';
import type { Figure } from '../../base/figure.ts';
import { drawValueAxis } from '../panels/drawValueAxis.ts';
import { cutText } from '../paper/cutText.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { writeHeading } from '../paper/writeHeading.ts';
import { type Panel, writeText } from '../paper/writeText.ts';

/** One quantity against load. */
export interface PointPlot {
  readonly heading: string;
  readonly aside: string;
  readonly unit: string;
  readonly points: readonly { readonly loadW: number; readonly figure: Figure }[];
  /** Where the quantity should lie, as a quiet band; an end left out is open. */
  readonly band: { readonly min?: number; readonly max?: number } | null;
  /** A level to compare with, and its name. */
  readonly reference: { readonly value: number; readonly name: string } | null;
  /** The scale spans this much at the least, so that a steady quantity looks steady. */
  readonly leastSpan: number;
}

const margin = { left: 66, right: 150, top: 22, bottom: 6 } as const;

/**
 * Points with their uncertainty against load, on a scale of their own.
 *
 * @param load - from W to px.
 * @param box - its top is the heading's baseline.
 */
export function drawPointPlot(
  panel: Panel,
  plot: PointPlot,
  load: ScaleLinear<number, number>,
  box: Box,
): void {
  const { points, band, reference } = plot;
  writeHeading(panel, plot.heading, plot.aside, box.x, box.y, box.width);
  const area = {
    x: box.x + margin.left,
    y: box.y + margin.top,
    width: box.width - margin.left - margin.right,
    height: box.height - margin.top - margin.bottom,
  };
  const value = scaleLinear(rangeOf(plot), [area.y + area.height, area.y]);
  const [low, high] = value.domain() as [number, number];
  if (band !== null) {
    const top = value(Math.min(high, band.max ?? high));
    const bottom = value(Math.max(low, band.min ?? low));
    if (bottom > top) {
      panel
        .append('rect')
        .attr('x', area.x)
        .attr('y', top.toFixed(1))
        .attr('width', area.width)
        .attr('height', (bottom - top).toFixed(1))
        .attr('fill', palette.ideal)
        .attr('fill-opacity', 0.25);
    }
  }
  if (reference !== null && reference.value >= low && reference.value <= high) {
    const y = value(reference.value);
    panel
      .append('path')
      .attr('d', `M${area.x} ${y.toFixed(1)}h${area.width}`)
      .attr('stroke', palette.idealText)
      .attr('stroke-dasharray', '6 4');
    const name = cutText(reference.name, margin.right - 12, 14);
    writeText(panel, name, area.x + area.width + 10, y + 5, { sizePx: 14, ink: palette.idealText });
  }
  drawValueAxis(panel, value, area, plot.unit, 36);
  const measured = points.flatMap(({ loadW, figure }) =>
    figure.value === null ? [] : [{ loadW, ...figure }],
  );
  const path = measured.map((point) => `${load(point.loadW).toFixed(1)} ${value(point.value).toFixed(1)}`);
  if (path.length > 1) {
    panel
      .append('path')
      .attr('d', `M${path.join('L')}`)
      .attr('fill', 'none')
      .attr('stroke', palette.bar)
      .attr('stroke-width', 1.6);
  }
  for (const point of measured) {
    const x = load(point.loadW);
    const clamp = (v: number): number => value(Math.max(low, Math.min(high, v)));
    panel
      .append('path')
      .attr(
        'd',
        `M${x.toFixed(1)} ${clamp(point.value - point.uncertainty).toFixed(1)}V${clamp(point.value + point.uncertainty).toFixed(1)}`,
      )
      .attr('stroke', palette.wave)
      .attr('stroke-width', 2);
    panel
      .append('path')
      .attr('d', `M${(x - 5).toFixed(1)} ${value(point.value).toFixed(1)}a5 5 0 1 0 10 0a5 5 0 1 0 -10 0z`)
      .attr('fill', palette.wave);
  }
}

/** The points with their uncertainties and the reference, at least as wide as asked. */
function rangeOf({ points, reference, leastSpan }: PointPlot): [number, number] {
  const ends = points.flatMap(({ figure }) =>
    figure.value === null ? [] : [figure.value - figure.uncertainty, figure.value + figure.uncertainty],
  );
  if (reference !== null && ends.length > 0) {
    // A level far from what is measured would flatten it.
    const [low, high] = [Math.min(...ends), Math.max(...ends)];
    const reach = Math.max(leastSpan, high - low);
    if (reference.value > low - reach && reference.value < high + reach) ends.push(reference.value);
  }
  if (ends.length === 0) return [0, leastSpan];
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const air = Math.max(0.08 * (high - low), (leastSpan - (high - low)) / 2);
  return [low >= 0 ? Math.max(0, low - air) : low - air, high + air];
}

/** Loads under the lowest plot, the last with its unit; one that would touch the one before is left out. */
export function drawLoadAxis(
  panel: Panel,
  loads: readonly number[],
  load: ScaleLinear<number, number>,
  y: number,
): void {
  let freeFrom = Number.NEGATIVE_INFINITY;
  for (const watts of loads) {
    const text = `${Math.round(watts)}\u00a0W`;
    const width = textWidth(text, 14);
    const left = load(watts) - width / 2;
    panel
      .append('path')
      .attr('d', `M${load(watts).toFixed(1)} ${y}v5`)
      .attr('stroke', palette.line);
    if (left < freeFrom) continue;
    writeText(panel, text, load(watts), y + 20, { sizePx: 14, ink: palette.soft, anchor: 'middle' });
    freeFrom = left + width + 10;
  }
}

/** Where the plots' areas lie between the left and right of their box. */
export const plotMargin: { readonly left: number; readonly right: number } = margin;
