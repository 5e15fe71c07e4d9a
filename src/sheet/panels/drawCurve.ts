import type { ScaleLinear } from 'd3';
import type { Panel } from '../paper/writeText.ts';
import { tracePath } from './tracePath.ts';

/** Draws samples against time as a line. */
export function drawCurve(
  panel: Panel,
  timeS: Float64Array,
  samples: Float64Array,
  time: ScaleLinear<number, number>,
  value: ScaleLinear<number, number>,
  ink: string,
  widthPx: number,
): void {
  panel
    .append('path')
    .attr(
      'd',
      tracePath(
        timeS.map((t) => time(t)),
        samples.map((v) => value(v)),
      ),
    )
    .attr('fill', 'none')
    .attr('stroke', ink)
    .attr('stroke-width', widthPx)
    .attr('stroke-linejoin', 'round');
}
