import type { ScaleLinear } from 'd3';
import type { Trace } from '../../verdict/assay.ts';
import { textWidth } from '../paper/textWidth.ts';
import { type Panel, writeText } from '../paper/writeText.ts';

const sizePx = 16;

/** What to name and how. */
export interface CurveName {
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
export function nameCurve(
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
