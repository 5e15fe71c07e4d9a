import type { Figure } from '../../base/figure.ts';
import { averageMeterPhrase } from '../answer/averageMeterPhrase.ts';
import type { MainFigures } from '../answer/mainFigures.ts';
import { boundText } from '../numbers/boundText.ts';
import { figureParts } from '../numbers/figureParts.ts';
import { figureText } from '../numbers/figureText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { cutText } from '../paper/cutText.ts';
import type { Box } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { writeHeading } from '../paper/writeHeading.ts';
import { type Panel, writeText } from '../paper/writeText.ts';

/**
 * The main figures: four large ones, then smaller rows.
 *
 * @param box - its top is the heading's baseline.
 * @returns the y where the next block's heading may stand.
 */
export function drawFigures(panel: Panel, figures: MainFigures, box: Box): number {
  const { x, y, width } = box;
  writeHeading(panel, 'Figures', 'each ± reads: about 95 % sure', x, y, width);
  const half = (width - 24) / 2;
  const right = x + half + 24;
  const rmsName = figures.unit === 'V' ? 'RMS voltage' : 'RMS current';
  drawLarge(panel, rmsName, figures.rms, figures.unit, x, y + 30, half);
  drawLarge(panel, 'Frequency', figures.frequencyHz, 'Hz', right, y + 30, half);
  drawLarge(panel, 'Crest factor', figures.crestFactor, '', x, y + 92, half);
  drawLarge(panel, `THD, orders 2 to ${figures.thdOrders}`, figures.thdPercent, '%', right, y + 92, half);

  const rows: [string, string][] = [
    [`THD plus noise${upTo(figures.bandwidthHz)}`, figureText(figures.thdNoisePercent, '%')],
    ['Mean (DC)', figureText(figures.mean, figures.unit)],
  ];
  const meter = averageMeterPhrase(figures.meter);
  if (meter !== null) rows.push([meter.row, meter.value]);
  rows.forEach(([name, value], i) => {
    const at = y + 150 + 22 * i;
    writeText(panel, value, x + width, at, { sizePx: 16, anchor: 'end' });
    const room = width - textWidth(value, 16) - 16;
    writeText(panel, cutText(name, room, 16), x, at, { sizePx: 16, ink: palette.soft });
  });
  return y + 150 + 22 * rows.length + 14;
}

function drawLarge(
  panel: Panel,
  name: string,
  figure: Figure,
  unit: string,
  x: number,
  y: number,
  width: number,
): void {
  writeText(panel, cutText(name, width, 15), x, y, { sizePx: 15, ink: palette.soft });
  if (figure.value === null) {
    writeText(panel, cutText('not measurable', width, 20), x, y + 30, { sizePx: 20, ink: palette.soft });
    return;
  }
  const parts = figureParts(figure);
  const doubt =
    figure.notAbove !== undefined
      ? `not above\u00a0${boundText(figure.notAbove)}`
      : parts.uncertainty === null
        ? ''
        : `±\u00a0${parts.uncertainty}`;
  // A number is never cut: what is left would be another number.
  const value = withUnit(parts.value, unit);
  const room = width - textWidth(doubt, 18) - 10;
  const sizePx = [30, 26, 22, 18, 14].find((size) => textWidth(value, size, 600) <= room) ?? 10;
  writeText(panel, value, x, y + 32, { sizePx, weight: 600 });
  writeText(panel, doubt, x + textWidth(value, sizePx, 600) + 10, y + 32, { sizePx: 18, ink: palette.soft });
}

function upTo(bandwidthHz: Figure): string {
  if (bandwidthHz.value === null) return '';
  const { value } = bandwidthHz;
  return value >= 1e4
    ? `, up to ${withUnit(String(Math.round(value / 1e3)), 'kHz')}`
    : `, up to ${withUnit(String(Math.round(value)), 'Hz')}`;
}
