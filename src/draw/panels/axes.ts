import { type ScaleLinear, ticks } from 'd3';
import { log10 } from '../../base/elementary.ts';
import { decimalText, withUnit } from '../../words/numbers.ts';
import { type Box, spreadOut } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { cutText, type Panel, writeText } from '../paper/writeText.ts';

const units = [
  { unit: 's', seconds: 1 },
  { unit: 'ms', seconds: 1e-3 },
  { unit: 'µs', seconds: 1e-6 },
] as const;

/** Round times under a plot, in the unit that keeps them short; the last one carries the unit. */
export function drawTimeAxis(panel: Panel, timeS: ScaleLinear<number, number>, box: Box): void {
  const span = Math.abs((timeS.domain()[1] ?? 1) - (timeS.domain()[0] ?? 0));
  const { unit, seconds } = units.find((candidate) => span >= 2 * candidate.seconds) ?? units[2];
  const scale = timeS.copy().domain(timeS.domain().map((t) => t / seconds));
  const [from = 0, to = 0] = scale.domain();
  const { values: ticks, decimals } = axisTicks(from, to, 9);
  const y = box.y + box.height;
  for (const tick of ticks) {
    const x = scale(tick);
    const text = decimalText(tick, decimals);
    const last = tick === ticks.at(-1);
    writeText(panel, last ? withUnit(text, unit) : text, x, y + 20, {
      sizePx: 14,
      ink: palette.soft,
      anchor: 'middle',
    });
    panel
      .append('path')
      .attr('d', `M${x.toFixed(1)} ${y}v5`)
      .attr('stroke', palette.line);
  }
}

/**
 * Round values down the left of a plot, the topmost with the unit, and a hairline at zero; no other line,
 * so that the eye stays on the curve.
 *
 * @param value - from `unit` to px.
 * @param pixelsPerTick - wanted distance between two ticks.
 */
export function drawValueAxis(
  panel: Panel,
  value: ScaleLinear<number, number>,
  box: Box,
  unit: string,
  pixelsPerTick: number,
): void {
  const shown = axisUnit(Math.max(...value.domain().map(Math.abs)), unit);
  const scale = value.copy().domain(value.domain().map((v) => v / shown.size));
  const { values: ticks, decimals } = readableTicks(
    scale,
    Math.max(2, Math.round(box.height / pixelsPerTick)),
  );
  for (const tick of ticks) {
    const y = scale(tick);
    const text = decimalText(tick, decimals);
    writeText(panel, tick === ticks.at(-1) ? withUnit(text, shown.unit) : text, box.x - 10, y + 5, {
      sizePx: 14,
      ink: palette.soft,
      anchor: 'end',
    });
    panel
      .append('path')
      .attr('d', `M${box.x - 6} ${y.toFixed(1)}h${tick === 0 ? box.width + 6 : 5}`)
      .attr('stroke', palette.line);
  }
}

/** About as many round values as wanted, and two at least, so that a scale can be read off. */
function readableTicks(value: ScaleLinear<number, number>, wanted: number): AxisTicks {
  const [from = 0, to = 0] = value.domain();
  const ticks = axisTicks(from, to, wanted);
  return ticks.values.length >= 2 || wanted > 10 ? ticks : readableTicks(value, wanted + 1);
}

/** Values worth a tick, ascending. */
interface AxisTicks {
  readonly values: readonly number[];
  /** That tell them apart; negative where tens or more do. */
  readonly decimals: number;
}

/**
 * Round values between two ends: multiples of 1, 2 or 5 times a power of ten.
 *
 * @param wanted - about how many: up to √2 times as many come, and one.
 */
export function axisTicks(from: number, to: number, wanted: number): AxisTicks {
  const values = ticks(from, to, wanted);
  const step = Math.abs((values[1] ?? 1) - (values[0] ?? 0));
  return { values, decimals: -Math.floor(log10(step) + 1e-9) };
}

/** A unit for the values along an axis. */
interface AxisUnit {
  readonly unit: string;
  /** In the base unit. */
  readonly size: number;
}

const prefixes = [
  ['G', 1e9],
  ['M', 1e6],
  ['k', 1e3],
  ['', 1],
  ['m', 1e-3],
  ['µ', 1e-6],
] as const;

/**
 * The prefix that keeps an axis's values short: the base unit from a hundredth to ten thousand, others beyond.
 *
 * @param reach - the largest size on the axis, in the base unit.
 */
export function axisUnit(reach: number, unit: string): AxisUnit {
  if (reach >= 0.01 && reach < 1e4) return { unit, size: 1 };
  const [prefix, size] = prefixes.find(([, candidate]) => reach >= 2 * candidate) ?? ['', 1];
  return reach >= 1e12 ? { unit, size: 1 } : { unit: prefix + unit, size };
}

/** A name to the right of a plot, at the end of its line. */
export interface LineName {
  readonly text: string;
  /** Where its line ends, px. */
  readonly y: number;
  readonly ink: string;
}

const sizePx = 14;
const leading = 17;

/** Names lines at their right ends, moved apart where they would touch. */
export function nameLines(panel: Panel, names: readonly LineName[], plot: Box, widthPx: number): void {
  const x = plot.x + plot.width + 10;
  const places = spreadOut(
    names.map(({ y }) => y + 5),
    leading,
    [plot.y + 4, plot.y + plot.height],
  );
  names.forEach(({ text, ink }, i) => {
    writeText(panel, cutText(text, widthPx - 12, sizePx), x, places[i]!, { sizePx, ink });
  });
}
