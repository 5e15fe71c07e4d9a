import { scaleLinear } from 'd3';
import { drawCurve } from '../panels/drawCurve.ts';
import { drawTimeAxis } from '../panels/drawTimeAxis.ts';
import { drawValueAxis } from '../panels/drawValueAxis.ts';
import { extentOf } from '../panels/extentOf.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { writeHeading } from '../paper/writeHeading.ts';
import type { Panel } from '../paper/writeText.ts';
import { drawMarks } from './drawMarks.ts';
import { instantSpan } from './instantSpan.ts';
import type { StepPicture } from './stepPicture.ts';
import type { StepSubject } from './stepSubject.ts';

const margin = { left: 58, top: 46, bottom: 24 } as const;

/**
 * The voltage itself, a few cycles around the change that the sheet is about.
 *
 * @param periodS - of one cycle, > 0.
 * @param box - its top is the heading's baseline.
 */
export function drawInstant(
  panel: Panel,
  picture: StepPicture,
  subject: StepSubject,
  periodS: number,
  box: Box,
): void {
  const span = instantSpan(subject, periodS);
  const { instantaneous } = picture;
  if (span === null || instantaneous === null) return;
  const { fromS: from, toS: to } = span;
  const { timeS, volts } = instantaneous;
  const first = timeS.findIndex((t) => t >= from);
  const beyond = timeS.findIndex((t) => t > to);
  const last = beyond < 0 ? timeS.length : beyond;
  if (first < 0 || last - first < 2) return;
  const t = timeS.subarray(first, last);
  const v = volts.subarray(first, last);
  writeHeading(panel, 'The instant', 'the voltage itself', box.x, box.y, box.width);
  const plot = {
    x: box.x + margin.left,
    y: box.y + margin.top,
    width: box.width - margin.left,
    height: box.height - margin.top - margin.bottom,
  };
  const time = scaleLinear([from, to], [plot.x, plot.x + plot.width]);
  const [low, high] = extentOf(v);
  const air = 0.05 * (high - low) || 1;
  const value = scaleLinear([low - air, high + air], [plot.y + plot.height, plot.y]);
  drawValueAxis(panel, value, plot, 'V', 40);
  drawTimeAxis(panel, time, plot);
  drawMarks(panel, picture, time, { ...plot, y: box.y + 14, height: plot.y + plot.height - box.y - 14 });
  drawCurve(panel, t, v, time, value, palette.wave, 1.6);
}
