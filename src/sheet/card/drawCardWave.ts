import { type ScaleLinear, scaleLinear } from 'd3';
import type { Trace } from '../../verdict/assay.ts';
import { drawCurve } from '../panels/drawCurve.ts';
import { extentOf } from '../panels/extentOf.ts';
import type { Inks } from '../paper/darkPalette.ts';
import type { Box } from '../paper/page.ts';
import { type Panel, writeText } from '../paper/writeText.ts';

/** Room above the curves for their names. */
const namesHeight = 44;

/**
 * The wave over its ideal, without axes: a card shows a shape. Where nothing repeats, the record alone.
 *
 * @param frequencyHz - null where there is no period, and so no ideal.
 * @param stretch - which part of the record is shown, "before the loss"; "as measured" where it is steady throughout.
 */
export function drawCardWave(
  panel: Panel,
  trace: Trace,
  frequencyHz: number | null,
  stretch: string,
  inks: Inks,
  box: Box,
): void {
  const endS = trace.timeS.at(-1) ?? 0;
  const time = scaleLinear([0, endS > 0 ? endS : 1], [box.x, box.x + box.width]);
  const [low, high] = frequencyHz === null ? extentOf(trace.wave) : extentOf(trace.wave, trace.ideal);
  const value = scaleLinear([low, high], [box.y + box.height - 6, box.y + namesHeight + 6]);
  drawZero(panel, value, inks, box);
  writeText(panel, `the wave ${stretch}`, box.x, box.y + 18, { sizePx: 26, weight: 600, ink: inks.wave });
  if (frequencyHz !== null) {
    drawCurve(panel, trace.timeS, trace.ideal, time, value, inks.ideal, 12);
    const style = { sizePx: 26, weight: 600, ink: inks.idealText, anchor: 'end' } as const;
    writeText(panel, 'a sine of the same RMS', box.x + box.width, box.y + 18, style);
  }
  drawCurve(panel, trace.timeS, trace.wave, time, value, inks.wave, 4);
}

function drawZero(panel: Panel, value: ScaleLinear<number, number>, inks: Inks, { x, width }: Box): void {
  const [low, high] = value.domain() as [number, number];
  if (low > 0 || high < 0) return;
  panel
    .append('path')
    .attr('d', `M${x} ${value(0).toFixed(1)}h${width.toFixed(1)}`)
    .attr('stroke', inks.line)
    .attr('stroke-width', 2);
}
