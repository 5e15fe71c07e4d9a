import type { Figure } from '../../base/figure.ts';
import { averageMeterPhrase } from '../answer/averageMeterPhrase.ts';
import type { MainFigures } from '../answer/mainFigures.ts';
import { figureText } from '../numbers/figureText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import type { Box } from '../paper/page.ts';
import { writeHeading } from '../paper/writeHeading.ts';
import type { Panel } from '../paper/writeText.ts';
import { drawLargeFigure } from './drawLargeFigure.ts';
import { drawRows } from './drawRows.ts';

/**
 * The main figures: four large ones, then smaller rows.
 *
 * @param stretch - which part of the record they describe, "before the loss"; empty where it is steady throughout.
 * @param box - its top is the heading's baseline.
 * @returns the y where the next block's heading may stand.
 */
export function drawFigures(panel: Panel, figures: MainFigures, stretch: string, box: Box): number {
  const { x, y, width } = box;
  writeHeading(
    panel,
    stretch === '' ? 'Figures' : `Figures ${stretch}`,
    'each ± reads: about 95 % sure',
    x,
    y,
    width,
  );
  const half = (width - 24) / 2;
  const right = x + half + 24;
  const rmsName = figures.unit === 'V' ? 'RMS voltage' : 'RMS current';
  drawLargeFigure(panel, rmsName, figures.rms, figures.unit, x, y + 30, half);
  drawLargeFigure(panel, 'Frequency', figures.frequencyHz, 'Hz', right, y + 30, half);
  drawLargeFigure(panel, 'Crest factor', figures.crestFactor, '', x, y + 92, half);
  drawLargeFigure(
    panel,
    `THD, orders 2 to ${figures.thdOrders}`,
    figures.thdPercent,
    '%',
    right,
    y + 92,
    half,
  );

  const rows: [string, string][] = [
    [`THD plus noise${upTo(figures.bandwidthHz)}`, figureText(figures.thdNoisePercent, '%')],
    ['Mean (DC)', figureText(figures.mean, figures.unit)],
  ];
  const meter = averageMeterPhrase(figures.meter);
  if (meter !== null) rows.push([meter.row, meter.value]);
  return drawRows(panel, rows, x, y + 150, width) + 14;
}

function upTo(bandwidthHz: Figure): string {
  if (bandwidthHz.value === null) return '';
  const { value } = bandwidthHz;
  return value >= 1e4
    ? `, up to ${withUnit(String(Math.round(value / 1e3)), 'kHz')}`
    : `, up to ${withUnit(String(Math.round(value)), 'Hz')}`;
}
