import { type ScaleLinear, scaleLinear } from 'd3';
import type { Trace } from '../../verdict/assay.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import type { Panel } from '../paper/writeText.ts';
import { drawCurve } from './drawCurve.ts';
import { drawValueAxis } from './drawValueAxis.ts';
import { extentOf } from './extentOf.ts';
import { nameCurve } from './nameCurve.ts';

/**
 * Two cycles of the wave, a thin dark line, over the ideal sine, a broad pale one.
 *
 * @param time - seconds to px, over the box's width.
 * @param frequencyHz - to find the place for the curves' names; null where there is no period.
 */
export function drawWave(
  panel: Panel,
  trace: Trace,
  frequencyHz: number | null,
  time: ScaleLinear<number, number>,
  box: Box,
): void {
  const [low, high] = extentOf(trace.wave, trace.ideal);
  const value = scaleLinear([low, high], [box.y + box.height - 4, box.y + 4]);
  drawValueAxis(panel, value, box, trace.unit, 36);
  drawCurve(panel, trace.timeS, trace.ideal, time, value, palette.ideal, 7);
  drawCurve(panel, trace.timeS, trace.wave, time, value, palette.wave, 2.2);
  if (frequencyHz === null) return;
  nameCurve(panel, trace, 'wave', frequencyHz, 0.8, time, value, 'the wave as measured');
  nameCurve(panel, trace, 'ideal', frequencyHz, 0.5, time, value, 'a sine of the same RMS and phase');
}
