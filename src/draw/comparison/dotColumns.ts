import { type ScaleLinear, scaleLinear } from 'd3';
import type { Figure, MeasuredFigure } from '../../base/figure.ts';
import type { BenchUnit } from '../../bench/benchDocument.ts';
import { deviationAt, endPoint, thdAt } from '../../words/bench/comparisonSentence.ts';
import { decimalText, significantText, withUnit } from '../../words/numbers.ts';
import { figureText } from '../../words/quantities.ts';
import { reasonText } from '../../words/reasons.ts';
import { type Box, strokePath } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { cutText, type Panel, writeText } from '../paper/writeText.ts';

/** What units are compared by: voltage, distortion, and efficiency where one of them has it. */
export function dotColumns(units: readonly BenchUnit[]): readonly DotColumn[] {
  const efficiencies = units.map(({ energy }) => energy[0]?.conversionEfficiencyPercent ?? null);
  const ends = 'hollow: no load; filled: full load';
  return [
    {
      heading: 'Voltage from nominal',
      aside: `${ends}; dashed: ±10 %`,
      unit: '%',
      rows: units.map(voltageRow),
      limits: [-10, 10],
      least: [-11, 11],
      share: 1.15,
    },
    {
      heading: 'THD',
      aside: ends,
      unit: '%',
      rows: units.map(distortionRow),
      limits: [],
      least: [0, 5],
      share: 1,
    },
    ...(efficiencies.some((figure) => figure !== null && figure.value !== null)
      ? [
          {
            heading: 'Efficiency',
            aside: 'AC out of DC',
            unit: '%',
            rows: efficiencies.map(efficiencyRow),
            limits: [],
            least: [50, 100] as const,
            share: 0.55,
          },
        ]
      : []),
  ];
}

function voltageRow(unit: BenchUnit): DotRow {
  const { regulationPercent } = unit.regulation;
  const volts = (['noLoad', 'fullLoad'] as const).flatMap((end) => {
    const value = endPoint(unit, end)?.rmsV.value ?? null;
    return value === null ? [] : [decimalText(value, 1)];
  });
  const text = [
    ...(volts.length === 0 ? [] : [withUnit(volts.join(' to '), 'V')]),
    regulationPercent.value === null
      ? `no regulation: ${reasonText(regulationPercent.reason)}`
      : `regulation ${figureText(regulationPercent, '%')}`,
  ].join(', ');
  return { noLoad: deviationAt(unit, 'noLoad'), fullLoad: deviationAt(unit, 'fullLoad'), text };
}

function distortionRow(unit: BenchUnit): DotRow {
  const [noLoad, fullLoad] = [thdAt(unit, 'noLoad'), thdAt(unit, 'fullLoad')];
  const text =
    noLoad.value === null && fullLoad.value === null
      ? reasonText(fullLoad.reason)
      : `${figureText(noLoad, '%')}, then ${figureText(fullLoad, '%')}`;
  return { noLoad: measured(noLoad), fullLoad: measured(fullLoad), text };
}

function efficiencyRow(figure: Figure | null): DotRow {
  const text = figure === null || figure.value === null ? 'not measured' : figureText(figure, '%');
  return { noLoad: null, fullLoad: figure === null ? null : measured(figure), text };
}

function measured(figure: Figure): MeasuredFigure | null {
  return figure.value === null ? null : figure;
}

/** One figure of all units on one scale, a row a unit. */
interface DotColumn {
  readonly heading: string;
  readonly aside: string;
  readonly unit: string;
  /** A row a unit, in their order. */
  readonly rows: readonly DotRow[];
  /** Named by the aside. */
  readonly limits: readonly number[];
  /** What the scale shows at the least. */
  readonly least: readonly [number, number];
  /** Of the room that the columns share. */
  readonly share: number;
}

interface DotRow {
  /** Without load: hollow, drawn above. */
  readonly noLoad: MeasuredFigure | null;
  /** At full load, or the only figure: filled. */
  readonly fullLoad: MeasuredFigure | null;
  /** The figures in text, written under the dots. */
  readonly text: string;
}

const radius = 5;
/** No load stands so far above the dots' middle, full load so far below; the text so far under the row's. */
const offset = 6;
const textOffset = 22;
/** The dots' middle stands above the row's, for the text under them. */
const dotRise = 4;
const lineReach = 12;

/**
 * One figure of all units: a pair of dots a row on one scale, with their uncertainty, joined, and their values below.
 *
 * @param middles - y of each row.
 * @param box - of the plot, without its heading and the values of its axis.
 */
export function drawDotColumn(panel: Panel, column: DotColumn, middles: readonly number[], box: Box): void {
  const { rows, limits, least, unit } = column;
  const figures = rows
    .flatMap(({ noLoad, fullLoad }) => [noLoad, fullLoad])
    .filter((figure) => figure !== null);
  const ends = figures.flatMap(({ value, uncertainty }) => [value - uncertainty, value + uncertainty]);
  const low = Math.min(least[0], ...(least[0] === 0 ? [] : ends));
  const x = scaleLinear(
    [low, Math.max(least[1], ...ends)],
    [box.x + radius + 2, box.x + box.width - radius - 2],
  );
  drawAxis(panel, x, box, unit);
  const levels = x.domain()[0]! < 0 ? [0, ...limits] : limits;
  rows.forEach((row, i) => {
    // Through the dots only: the text under them stays free.
    const d = (level: number): string =>
      `M${x(level).toFixed(1)} ${(middles[i]! - dotRise - lineReach).toFixed(1)}v${2 * lineReach}`;
    for (const level of levels) {
      if (level === 0) strokePath(panel, d(level), { ink: palette.line, widthPx: 1 });
      else strokePath(panel, d(level), { ink: palette.idealText, widthPx: 1.5, dash: '6 3' });
    }
    drawRow(panel, row, x, middles[i]!, box);
  });
}

function drawAxis(panel: Panel, x: ScaleLinear<number, number>, box: Box, unit: string): void {
  const bottom = box.y + box.height;
  const ticks = x.ticks(Math.max(2, Math.min(5, Math.round(box.width / 70))));
  for (const tick of ticks) {
    const at = x(tick).toFixed(1);
    strokePath(panel, `M${at} ${bottom}v5`, { ink: palette.line, widthPx: 1 });
    const text = significantText(tick, 4);
    const shown = tick === ticks.at(-1) ? withUnit(text, unit) : text;
    writeText(panel, shown, x(tick), bottom + 19, { sizePx: 14, ink: palette.soft, anchor: 'middle' });
  }
}

function drawRow(
  panel: Panel,
  { noLoad, fullLoad, text }: DotRow,
  x: ScaleLinear<number, number>,
  middle: number,
  box: Box,
): void {
  const dots = middle - dotRise;
  const upper = dots - offset;
  const lower = noLoad === null ? dots : dots + offset;
  if (noLoad !== null && fullLoad !== null) {
    const from = `M${x(noLoad.value).toFixed(1)} ${upper.toFixed(1)}`;
    strokePath(panel, `${from}L${x(fullLoad.value).toFixed(1)} ${lower.toFixed(1)}`, {
      ink: palette.bar,
      widthPx: 1.6,
    });
  }
  if (noLoad !== null) drawDot(panel, noLoad, x, upper, palette.paper);
  if (fullLoad !== null) drawDot(panel, fullLoad, x, lower, palette.wave);
  const shown = cutText(text, box.width, 14);
  writeText(panel, shown, box.x, middle + textOffset, { sizePx: 14, ink: palette.soft });
}

function drawDot(
  panel: Panel,
  { value, uncertainty }: MeasuredFigure,
  x: ScaleLinear<number, number>,
  y: number,
  fill: string,
): void {
  const [left] = x.range() as [number, number];
  // A figure that can't be negative may still have a bar that reaches below the scale's zero.
  const from = Math.max(left, x(value - uncertainty));
  strokePath(panel, `M${from.toFixed(1)} ${y.toFixed(1)}H${x(value + uncertainty).toFixed(1)}`, {
    ink: palette.wave,
    widthPx: 1.2,
  });
  panel
    .append('path')
    .attr(
      'd',
      `M${(x(value) - radius).toFixed(1)} ${y.toFixed(1)}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0`,
    )
    .attr('fill', fill)
    .attr('stroke', palette.wave)
    .attr('stroke-width', 1.8);
}
