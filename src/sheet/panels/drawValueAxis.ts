import type { ScaleLinear } from 'd3';
import { decimalText } from '../numbers/decimalText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import { type AxisTicks, axisTicks } from './axisTicks.ts';
import { axisUnit } from './axisUnit.ts';

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
