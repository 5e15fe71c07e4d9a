import { type ScaleLinear, scaleLinear } from 'd3';
import type { Trace } from '../../verdict/assay.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import type { Panel } from '../paper/writeText.ts';
import { drawCurve } from './drawCurve.ts';
import { drawValueAxis } from './drawValueAxis.ts';
import { extentOf } from './extentOf.ts';

/** What is left of the wave when the ideal sine is taken away, on a scale of its own. */
export function drawResidual(panel: Panel, trace: Trace, time: ScaleLinear<number, number>, box: Box): void {
  const limit = residualReach(trace);
  const value = scaleLinear([-limit, limit], [box.y + box.height - 2, box.y + 2]);
  drawValueAxis(panel, value, box, trace.unit, 26);
  drawCurve(panel, trace.timeS, trace.residual, time, value, palette.wave, 1.4);
}

/** Half the height of the residual's scale; a thousandth of the wave at least, so that rounding isn't blown up. */
function residualReach(trace: Trace): number {
  const [low, high] = extentOf(trace.residual);
  const [bottom, top] = extentOf(trace.ideal);
  return Math.max(Math.abs(low), Math.abs(high), (top - bottom) / 2000) || 1;
}
