import { type ScaleLinear, scaleLinear } from 'd3';
import { drawCurve } from '../panels/drawCurve.ts';
import { drawValueAxis } from '../panels/drawValueAxis.ts';
import { extentOf } from '../panels/extentOf.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { writeHeading } from '../paper/writeHeading.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import { type OverlayWave, waveDifference } from './overlayWave.ts';

/** Room left of the plots for their values, below them for the cycles. */
const axisWidth = 58;
const cyclesHeight = 24;
const differenceHeight = 84;
const headingHeight = 44;

/**
 * Two waves over each other, each by its own cycles from a rising zero, and their difference below.
 *
 * @param unit - of both.
 * @param box - its top is the heading's baseline.
 */
export function drawOverlay(panel: Panel, a: OverlayWave, b: OverlayWave, unit: 'V' | 'A', box: Box): void {
  const end = Math.max(a.cycles.at(-1) ?? 0, b.cycles.at(-1) ?? 0) || 1;
  const plot = { x: box.x + axisWidth, width: box.width - axisWidth };
  const cycle = scaleLinear([0, end], [plot.x, plot.x + plot.width]);
  const bottom = box.y + box.height - cyclesHeight;
  const waveBottom = bottom - differenceHeight - headingHeight;
  writeHeading(panel, 'Both waves', 'each by its own cycles, from a rising zero', box.x, box.y, box.width);
  nameWaves(panel, box);
  const waveBox = { ...plot, y: box.y + 30, height: waveBottom - box.y - 30 };
  const value = scaleLinear(extentOf(a.wave, b.wave), [waveBox.y + waveBox.height - 4, waveBox.y + 4]);
  drawValueAxis(panel, value, waveBox, unit, 40);
  // A broad pale line under a thin dark one: both stay visible where they coincide, in grey too.
  drawCurve(panel, a.cycles, a.wave, cycle, value, palette.ideal, 7);
  drawCurve(panel, b.cycles, b.wave, cycle, value, palette.wave, 2.2);

  const difference = waveDifference(a, b);
  const heading = waveBottom + headingHeight - 18;
  writeHeading(panel, 'B − A', 'wave by wave, on a scale of its own', box.x, heading, box.width);
  const reach = Math.max(...extentOf(difference).map(Math.abs)) || 1;
  const differenceBox = { ...plot, y: bottom - differenceHeight, height: differenceHeight };
  const scale = scaleLinear([-reach, reach], [bottom - 2, differenceBox.y + 2]);
  drawValueAxis(panel, scale, differenceBox, unit, 28);
  drawCurve(panel, a.cycles, difference, cycle, scale, palette.ink, 1.4);
  drawCycles(panel, cycle, bottom);
}

/** Which is which, in its own ink, right of the heading. */
function nameWaves(panel: Panel, { x, y, width }: Box): void {
  const style = { sizePx: 16, weight: 600, anchor: 'end' } as const;
  const right = x + width;
  writeText(panel, 'B, thin', right, y, { ...style, ink: palette.wave });
  const left = right - textWidth('B, thin', 16, 600) - 22;
  writeText(panel, 'A, broad', left, y, { ...style, ink: palette.idealText });
}

function drawCycles(panel: Panel, cycle: ScaleLinear<number, number>, y: number): void {
  const ticks = cycle.ticks(8);
  for (const tick of ticks) {
    const text = tick === ticks.at(-1) ? `${tick} cycles` : String(tick);
    const anchor = tick === ticks.at(-1) ? 'end' : 'middle';
    writeText(panel, text, cycle(tick), y + 20, { sizePx: 14, ink: palette.soft, anchor });
    panel
      .append('path')
      .attr('d', `M${cycle(tick).toFixed(1)} ${y}v5`)
      .attr('stroke', palette.line);
  }
}
