import { type ScaleLinear, scaleLinear } from 'd3';
import type { Trace } from '../../assay/assay.ts';
import { decimalText } from '../../words/numbers.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { type Panel, textWidth, writeHeading, writeText } from '../paper/writeText.ts';
import { drawTimeAxis, drawValueAxis } from './axes.ts';
import { drawCurve, extentOf, spanOf } from './drawCurve.ts';

/** Room left of the plots for their values, and below them for the times. */
const axisWidth = 58;
const timeHeight = 24;
/** Of the residual's plot, and of its heading with the air above it. */
const residualHeight = 76;
const headingHeight = 40;

/**
 * The wave over its ideal, and under it what is left between the two, on one time axis. Without a period there
 * is no ideal: the record alone.
 *
 * @param channel - its name.
 * @param frequencyHz - null where no period was found.
 * @param stretch - which part of the record is shown, "before the loss"; empty where it is steady throughout.
 * @param box - its top is the first heading's baseline.
 */
export function drawTrace(
  panel: Panel,
  trace: Trace,
  channel: string,
  frequencyHz: number | null,
  stretch: string,
  box: Box,
): void {
  const [fromS, toS] = spanOf(trace.timeS);
  const plot = { x: box.x + axisWidth, width: box.width - axisWidth };
  const time = scaleLinear([fromS, toS], [plot.x, plot.x + plot.width]);
  const bottom = box.y + box.height - timeHeight;
  const waveBottom = frequencyHz === null ? bottom : bottom - residualHeight - headingHeight;
  const waveBox = { ...plot, y: box.y + 12, height: waveBottom - box.y - 12 };

  writeHeading(
    panel,
    `${headingOf(toS - fromS, frequencyHz)}${stretch === '' ? '' : ` ${stretch}`}`,
    channelName(channel),
    box.x,
    box.y,
    box.width,
  );
  drawWave(panel, trace, frequencyHz, time, waveBox);
  if (frequencyHz === null) {
    drawTimeAxis(panel, time, waveBox);
    return;
  }
  const aside = 'the wave minus that sine, on a scale of its own';
  writeHeading(panel, 'Residual', aside, box.x, waveBottom + headingHeight - 16, box.width);
  const residualBox = { ...plot, y: bottom - residualHeight, height: residualHeight };
  drawResidual(panel, trace, time, residualBox);
  drawTimeAxis(panel, time, residualBox);
}

/** Most files name a channel "CH1" or "Channel A": no need to say it twice. */
function channelName(channel: string): string {
  return /^ch/i.test(channel) ? channel : `channel ${channel}`;
}

function headingOf(durationS: number, frequencyHz: number | null): string {
  if (frequencyHz === null) return 'The record';
  const cycles = durationS * frequencyHz;
  return cycles > 1.95 ? 'Two cycles' : `${decimalText(cycles, 1)} cycles`;
}

/** Least distance between the two names, px. */
const nameLeading = 22;

/**
 * Two cycles of the wave, a thin dark line, over the ideal sine, a broad pale one.
 *
 * @param time - seconds to px, over the box's width.
 * @param frequencyHz - to find the place for the curves' names; null where there is no period, and so no ideal.
 */
function drawWave(
  panel: Panel,
  trace: Trace,
  frequencyHz: number | null,
  time: ScaleLinear<number, number>,
  box: Box,
): void {
  const [low, high] = frequencyHz === null ? extentOf(trace.wave) : extentOf(trace.wave, trace.ideal);
  const value = scaleLinear([low, high], [box.y + box.height - 4, box.y + 4]);
  drawValueAxis(panel, value, box, trace.unit, 36);
  const drawLine = (samples: Float64Array, ink: string, widthPx: number): void =>
    drawCurve(panel, trace.timeS, samples, time, value, ink, widthPx);
  if (frequencyHz === null) {
    drawLine(trace.wave, palette.wave, 1.2);
    return;
  }
  drawLine(trace.ideal, palette.ideal, 7);
  drawLine(trace.wave, palette.wave, 2.2);
  const waveY = value(0.8 * extentOf(trace.wave)[1]);
  const idealY = Math.max(value(0.5 * extentOf(trace.ideal)[1]), waveY + nameLeading);
  const names: readonly CurveName[] = [
    { text: 'the wave as measured', samples: trace.wave, ink: palette.wave, y: waveY },
    { text: 'a sine of the same RMS', samples: trace.ideal, ink: palette.idealText, y: idealY },
  ];
  for (const name of names) nameCurve(panel, trace, name, frequencyHz, time, value);
}

/** What is left of the wave when the ideal sine is taken away, on a scale of its own. */
function drawResidual(panel: Panel, trace: Trace, time: ScaleLinear<number, number>, box: Box): void {
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

const sizePx = 16;

/** What to name and how. */
interface CurveName {
  readonly text: string;
  readonly samples: Float64Array;
  readonly ink: string;
  /** Height of the name, px. */
  readonly y: number;
}

/**
 * Names a curve where its first positive half-cycle falls: text in the empty space that follows, and a
 * hairline from it to the curve. Writes nothing where the curve does not fall there or the space is taken.
 */
function nameCurve(
  panel: Panel,
  { timeS, wave }: Trace,
  { text, samples, ink, y }: CurveName,
  frequencyHz: number,
  time: ScaleLinear<number, number>,
  value: ScaleLinear<number, number>,
): void {
  const turn = (t: number): number => t * frequencyHz;
  const height = value.invert(y);
  const fallS = timeS.findLast(
    (t, i) =>
      turn(t) > 0.2 && turn(t) < 0.54 && (samples[i] ?? 0) < height && (samples[i - 1] ?? 0) >= height,
  );
  const x = time(0.56 / frequencyHz);
  const end = x + textWidth(text, sizePx);
  if (height <= 0 || fallS === undefined || end > time(Math.min(1 / frequencyHz, timeS.at(-1) ?? 0))) return;

  const bottom = y + 0.4 * sizePx + 6;
  const isTaken = timeS.some(
    (t, i) => turn(t) > 0.54 && time(t) < end + 8 && value(wave[i] ?? Number.NaN) < bottom,
  );
  if (isTaken) return;
  panel
    .append('path')
    .attr('d', `M${(time(fallS) + 5).toFixed(1)} ${y.toFixed(1)}H${(x - 6).toFixed(1)}`)
    .attr('stroke', ink);
  writeText(panel, text, x, y + 0.33 * sizePx, { sizePx, ink });
}
