import type { ScaleLinear } from 'd3';
import { decimalText } from '../numbers/decimalText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import { axisTicks } from './axisTicks.ts';

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
