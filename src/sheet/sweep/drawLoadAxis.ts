import type { ScaleLinear } from 'd3';
import { significantText } from '../numbers/significantText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { palette } from '../paper/palette.ts';
import { type Panel, writeText } from '../paper/writeText.ts';

/** Round loads under the lowest plot; the last carries the unit. */
export function drawLoadAxis(panel: Panel, load: ScaleLinear<number, number>, y: number): void {
  const ticks = load.ticks(7);
  for (const tick of ticks) {
    const x = load(tick);
    const text = significantText(tick, 4);
    const shown = tick === ticks.at(-1) ? withUnit(text, 'W') : text;
    writeText(panel, shown, x, y + 20, { sizePx: 14, ink: palette.soft, anchor: 'middle' });
    panel
      .append('path')
      .attr('d', `M${x.toFixed(1)} ${y}v5`)
      .attr('stroke', palette.line);
  }
}
