import { type ScaleLinear, scaleLinear } from 'd3';
import type { Trace } from '../../verdict/assay.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import type { Panel } from '../paper/writeText.ts';
import { drawCurve } from './drawCurve.ts';
import { drawValueAxis } from './drawValueAxis.ts';
import { extentOf } from './extentOf.ts';
import { type CurveName, nameCurve } from './nameCurve.ts';

/** Least distance between the two names, px. */
const nameLeading = 22;

/**
 * Two cycles of the wave, a thin dark line, over the ideal sine, a broad pale one.
 *
 * @param time - seconds to px, over the box's width.
 * @param frequencyHz - to find the place for the curves' names; null where there is no period, and so no ideal.
 */
export function drawWave(
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
