import type { ScaleLinear } from 'd3';
import type { Trace } from '../../verdict/assay.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import { extentOf } from './extentOf.ts';

const sizePx = 16;

/**
 * Names a curve where the first positive half-cycle falls: text in the empty space that follows, and a
 * hairline from it to the curve. Writes nothing where the curve does not fall there or the space is taken.
 *
 * @param level - height of the name as a share of the curve's highest value.
 */
export function nameCurve(
  panel: Panel,
  trace: Trace,
  which: 'wave' | 'ideal',
  frequencyHz: number,
  level: number,
  time: ScaleLinear<number, number>,
  value: ScaleLinear<number, number>,
  name: string,
): void {
  const { timeS } = trace;
  const samples = trace[which];
  const periodS = 1 / frequencyHz;
  const early = timeS.findIndex((t) => t > 0.25 * periodS);
  const late = timeS.findIndex((t) => t > 0.54 * periodS);
  if (early < 0 || late < 0) return;
  const height = level * extentOf(samples.subarray(0, late))[1];
  const fall = samples.findIndex((v, i) => i >= early && i <= late && v < height);
  const x = time(0.56 * periodS);
  const width = textWidth(name, sizePx);
  if (fall < 0 || height <= 0 || x + width > time(Math.min(periodS, timeS.at(-1) ?? 0))) return;

  const lowest = value(height) + 0.4 * sizePx + 6;
  const taken = timeS.some(
    (t, i) => t > 0.54 * periodS && time(t) < x + width + 8 && value(trace.wave[i] ?? 0) < lowest,
  );
  if (taken) return;
  const ink = which === 'wave' ? palette.wave : palette.idealText;
  const y = value(height);
  panel
    .append('path')
    .attr('d', `M${(time(timeS[fall] ?? 0) + 5).toFixed(1)} ${y.toFixed(1)}H${(x - 6).toFixed(1)}`)
    .attr('stroke', ink);
  writeText(panel, name, x, y + 0.33 * sizePx, { sizePx, ink });
}
