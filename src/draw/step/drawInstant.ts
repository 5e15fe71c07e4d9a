import { type ScaleLinear, scaleLinear } from 'd3';
import { drawTimeAxis, drawValueAxis } from '../panels/axes.ts';
import { drawCurve, extentOf } from '../panels/drawCurve.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { type Panel, textWidth, writeHeading, writeText } from '../paper/writeText.ts';
import {
  eventTimes,
  instantSpan,
  type PicturedEvent,
  type StepPicture,
  type StepSubject,
} from './stepPicture.ts';

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

const sizePx = 14;

/**
 * A hairline at each step, a pale band over each event, named above where there is room for the name.
 *
 * @param box - the plot with room for one line of names at its top.
 */
export function drawMarks(
  panel: Panel,
  picture: StepPicture,
  time: ScaleLinear<number, number>,
  box: Box,
): void {
  const { steps, events } = picture;
  const [from, to] = [box.x, box.x + box.width];
  const marks = [
    ...events
      .filter((event) => !isToldAlready(event, picture))
      .map((event) => ({ ...eventTimes(event), name: event.kind })),
    ...steps.map((step) => ({ startS: step.atS.value, endS: null, name: `load ${step.direction}` })),
  ].sort((a, b) => a.startS - b.startS);
  let freeFrom = from;
  for (const { startS, endS, name } of marks) {
    const x = time(startS);
    if (x < from || x > to) continue;
    if (endS === null) {
      panel
        .append('path')
        .attr('d', `M${x.toFixed(1)} ${box.y + 20}V${box.y + box.height}`)
        .attr('stroke', palette.line);
    } else {
      panel
        .append('rect')
        .attr('x', x.toFixed(1))
        .attr('y', box.y + 20)
        .attr('width', Math.max(2, Math.min(to, time(endS)) - x).toFixed(1))
        .attr('height', box.height - 20)
        .attr('fill', palette.ideal)
        .attr('fill-opacity', 0.35);
    }
    const width = textWidth(name, sizePx);
    const left = Math.min(Math.max(from, x - width / 2), to - width);
    if (left < freeFrom) continue;
    writeText(panel, name, left, box.y + 13, { sizePx, ink: palette.soft });
    freeFrom = left + width + 14;
  }
}

/** A step's or break's own dip is told by the step or break. */
function isToldAlready(event: PicturedEvent, { steps, events }: StepPicture): boolean {
  if (event.kind !== 'dip' && event.kind !== 'swell' && event.kind !== 'interruption') return false;
  // A cycle each way: Urms(1/2) smears an instant over so much.
  const near = ({ startS, endS }: { readonly startS: number; readonly endS: number | null }): boolean =>
    startS < event.endS + 0.02 && (endS ?? startS) > event.startS - 0.02;
  const others = events.filter(({ kind }) => !['dip', 'swell', 'interruption'].includes(kind));
  return (
    others.some((other) => near(eventTimes(other))) ||
    steps.some(({ atS }) => near({ startS: atS.value, endS: null }))
  );
}
