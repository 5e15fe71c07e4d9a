import { scaleLinear } from 'd3';
import type { Trace } from '../../verdict/assay.ts';
import { decimalText } from '../numbers/decimalText.ts';
import type { Box } from '../paper/page.ts';
import { writeHeading } from '../paper/writeHeading.ts';
import type { Panel } from '../paper/writeText.ts';
import { drawResidual } from './drawResidual.ts';
import { drawTimeAxis } from './drawTimeAxis.ts';
import { drawWave } from './drawWave.ts';

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
  const endS = trace.timeS.at(-1) ?? 0;
  const plot = { x: box.x + axisWidth, width: box.width - axisWidth };
  const time = scaleLinear([0, endS > 0 ? endS : 1], [plot.x, plot.x + plot.width]);
  const bottom = box.y + box.height - timeHeight;
  const waveBottom = frequencyHz === null ? bottom : bottom - residualHeight - headingHeight;
  const waveBox = { ...plot, y: box.y + 12, height: waveBottom - box.y - 12 };

  writeHeading(
    panel,
    `${headingOf(endS, frequencyHz)}${stretch === '' ? '' : ` ${stretch}`}`,
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
