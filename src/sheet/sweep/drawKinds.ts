import type { ScaleLinear } from 'd3';
import type { BenchPoint } from '../../bench/benchDocument.ts';
import { cutText } from '../paper/cutText.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import { kindRuns } from './kindRuns.ts';

const sizePx = 15;
/** Lines that names may take turns on, where runs are too short for one. */
const mostLanes = 3;
const leading = 18;

/**
 * The kind of wave at each load: a bar over each run of loads with one kind, and its name above.
 *
 * @param y - top of the strip.
 * @returns its bottom.
 */
export function drawKinds(
  panel: Panel,
  points: readonly BenchPoint[],
  load: ScaleLinear<number, number>,
  y: number,
): number {
  const [left, right] = load.range() as [number, number];
  const ends: number[] = [];
  const runs = kindRuns(points).map(({ words, isLost, fromW, toW }) => {
    const [from, to] = [load(fromW) - 5, load(toW) + 5];
    const text = cutText(words, right - left, sizePx);
    const width = textWidth(text, sizePx);
    const x = Math.max(left, Math.min(from, right + 5 - width));
    const free = ends.findIndex((end) => x >= end + 14);
    const lane = free < 0 ? ends.length : free;
    if (lane < mostLanes) ends[lane] = x + width;
    return { text, x, lane, from, to, ...inksOf(words, isLost) };
  });
  const barY = y + ends.length * leading + 8;
  for (const { text, x, lane, from, to, bar, ink } of runs) {
    panel
      .append('path')
      .attr('d', `M${from.toFixed(1)} ${barY}H${to.toFixed(1)}`)
      .attr('stroke', bar)
      .attr('stroke-width', 5);
    if (lane >= mostLanes) continue;
    writeText(panel, text, x, barY - 9 - lane * leading, { sizePx, ink });
  }
  return barY + 3;
}

function inksOf(words: string, isLost: boolean): { readonly bar: string; readonly ink: string } {
  if (isLost) return { bar: palette.outside, ink: palette.outside };
  return words.startsWith('pure sine')
    ? { bar: palette.bar, ink: palette.wave }
    : { bar: palette.ink, ink: palette.ink };
}
