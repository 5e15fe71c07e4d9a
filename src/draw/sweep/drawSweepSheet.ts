import { type ScaleLinear, scaleLinear } from 'd3';
import type { BenchPoint, BenchUnit } from '../../bench/benchDocument.ts';
import { isInvented } from '../../words/answerSentence.ts';
import { benchSpoken } from '../../words/bench/benchSpoken.ts';
import { bindUnits, significantText, withUnit } from '../../words/numbers.ts';
import { cleanTexts, spelledUnits } from '../../words/text.ts';
import { capturesHeight, drawCaptures } from '../panels/drawCaptures.ts';
import { drawClaims } from '../panels/drawMargin.ts';
import { drawNotes } from '../panels/drawNotes.ts';
import { drawLargeFigure, drawRows } from '../panels/drawRows.ts';
import { drawCautions, drawTitle, sheetDoubts } from '../panels/drawTitle.ts';
import { type Box, openSheet, page } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { cutText, type Panel, svgText, textWidth, writeHeading, writeText } from '../paper/writeText.ts';
import { drawQuantity, plotMargin } from './drawQuantity.ts';
import { sweepMethod, sweepQuantities } from './sweepQuantities.ts';
import { kindRuns, sweepRows } from './sweepRows.ts';

/** A unit's sweep as the text of one self-contained SVG file (see `drawSweepSheet`). */
export function sweepSvg(document: Document, unit: BenchUnit): string {
  return svgText(drawSweepSheet(document, unit));
}

/** Baseline of the headings under the header, and the last one above the foot. */
const bodyY = 228;
const bodyBottom = 822;
/** Of the height that the three plots share. */
const shares = [0.42, 0.3, 0.28] as const;
const gap = 32;
/** Claims shown: a unit's are what the sheet is about. */
const shownClaims = 6;
/** Less room than this holds no sentence of how the figures were worked out. */
const leastMethodHeight = 70;

/**
 * Draws a unit's sweep as one page: voltage, THD and crest factor against the load with their limits, the kind of
 * wave at each load, the figures, the claims, and the captures with their digests.
 *
 * @param document - a browser's, or jsdom's.
 * @param told - what is from a file or a plan in it is cleaned and escaped here.
 * @returns a detached element, 1600 × 900, self-contained.
 */
export function drawSweepSheet(document: Document, told: BenchUnit): SVGSVGElement {
  const unit = cleanTexts(told);
  const [answer, caveat] = benchSpoken(unit).map(bindUnits) as [string, string];
  const question =
    unit.claims.length === 0
      ? 'Does the voltage hold from no load to full load?'
      : 'Does it hold what is claimed, from no load to full load?';
  const { svg, panel } = openSheet(
    document,
    `${question} ${answer}`,
    `One page: RMS voltage, distortion and crest factor of ${unit.label} against its load, from ${unit.points.length} captures, with limits and uncertainties. A measurement, not a certificate.`,
  );
  drawTitle(panel(), { question, answer, subject: subjectOf(unit), isInvented: isInvented(unit) });
  const captures = unit.points.map(({ file, sha256, loadW }) => ({
    file,
    sha256,
    of: loadW.value === null ? 'load unknown' : watts(loadW.value),
  }));
  const listY = bodyBottom - capturesHeight(captures.length);
  drawSweep(panel(), unit, { x: page.left, y: bodyY, width: page.twoColumns, height: listY - 30 - bodyY });
  drawMargin(panel(), unit, `${spelledUnits(answer)} ${caveat}`, {
    x: page.columnX(2),
    y: bodyY,
    width: page.columnWidth,
    height: listY - 30 - bodyY,
  });
  drawCaptures(panel(), captures, listY);
  drawCautions(panel());
  return svg;
}

function drawSweep(panel: Panel, unit: BenchUnit, box: Box): void {
  const loads = unit.points.flatMap(({ loadW }) => (loadW.value === null ? [] : [loadW.value]));
  const unknown = unit.points.length - loads.length;
  const asides = [
    ...(unit.points.some(({ lost }) => lost !== undefined) ? ['cross: the output was lost'] : []),
    ...(unit.points.some(({ overload }) => overload) ? ['hollow: above the rated load'] : []),
    ...(unit.clipping.betweenW === null ? [] : ['shaded: the tops flatten in here']),
    ...(unknown > 0 ? [`${unknown} of unknown load not drawn`] : []),
  ];
  writeHeading(panel, 'Kind of wave', asides.join('; '), box.x, box.y, box.width);
  if (loads.length === 0) {
    writeText(panel, 'No capture has a known load.', box.x, box.y + 26, { sizePx: 16, ink: palette.soft });
    return;
  }
  const load = loadScale(loads, box);
  const kindsBottom = drawKinds(panel, unit.points, load, box.y + 4);
  shadeClipping(panel, unit, load, kindsBottom, box.y + box.height - 24);
  const top = kindsBottom + 32;
  const room = box.y + box.height - 24 - top - (shares.length - 1) * gap;
  let y = top;
  sweepQuantities(unit).forEach((quantity, i) => {
    const height = (shares[i] ?? 0) * room;
    if (quantity.points.length > 0) drawQuantity(panel, quantity, load, { ...box, y, height });
    else writeHeading(panel, quantity.name, 'not measurable in any of the captures', box.x, y, box.width);
    y += height + gap;
  });
  drawLoadAxis(panel, load, box.y + box.height - 24);
}

/** A pale band over the loads between which the tops begin to flatten. */
function shadeClipping(
  panel: Panel,
  { clipping }: BenchUnit,
  load: ScaleLinear<number, number>,
  top: number,
  bottom: number,
): void {
  if (clipping.betweenW === null) return;
  const [from, to] = clipping.betweenW.map((watts) => load(watts)) as [number, number];
  panel
    .append('rect')
    .attr('x', from.toFixed(1))
    .attr('y', top.toFixed(1))
    .attr('width', Math.max(1, to - from).toFixed(1))
    .attr('height', (bottom - top).toFixed(1))
    .attr('fill', palette.ideal)
    .attr('fill-opacity', 0.22);
}

/** From nothing to the largest load, with room for the dots at both ends. */
function loadScale(loads: readonly number[], box: Box): ScaleLinear<number, number> {
  const highest = Math.max(...loads) || 1;
  const lowest = Math.min(0, ...loads);
  const [from, to] = [box.x + plotMargin.left, box.x + box.width - plotMargin.right];
  return scaleLinear([lowest - 0.03 * highest, highest * 1.05], [from, to]);
}

function drawMargin(panel: Panel, unit: BenchUnit, said: string, box: Box): void {
  const { x, width } = box;
  const half = (width - 24) / 2;
  writeHeading(panel, 'Figures', 'each ± reads: about 95 % sure', x, box.y, width);
  drawLargeFigure(panel, 'Regulation', unit.regulation.regulationPercent, '%', x, box.y + 30, half);
  const impedance = unit.droop.outputImpedanceOhm;
  drawLargeFigure(panel, 'Output impedance', impedance, 'Ω', x + half + 24, box.y + 30, half);
  let y = drawRows(panel, sweepRows(unit), x, box.y + 92, width) + 14;
  y = drawClaims(panel, unit.claims, { ...box, y }, shownClaims);
  const rest = (share: number): Box => ({ ...box, y, height: share * (box.y + box.height - y) });
  y = drawNotes(panel, 'To say on camera', [said], rest(1));
  y = drawNotes(panel, 'What to doubt', sheetDoubts(unit.notices), rest(0.65));
  const left = rest(1);
  if (left.height >= leastMethodHeight) drawNotes(panel, 'How it was worked out', sweepMethod(unit), left);
}

function subjectOf({ label, nominal, ratedW, points, earlier }: BenchUnit): string {
  const parts = [
    label,
    ...(nominal === null
      ? []
      : [
          `${withUnit(significantText(nominal.voltageV, 4), 'V')} ${withUnit(significantText(nominal.frequencyHz, 4), 'Hz')} nominal`,
        ]),
    ratedW === null ? 'rated load not told' : `rated ${watts(ratedW)}`,
    points.length === 1 ? 'one capture' : `a sweep of ${points.length} captures`,
    ...(earlier === undefined ? [] : ['from an earlier document']),
  ];
  return parts.join(' · ');
}

function watts(loadW: number): string {
  return withUnit(significantText(loadW, 4), 'W');
}

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
function drawKinds(
  panel: Panel,
  points: readonly BenchPoint[],
  load: ScaleLinear<number, number>,
  y: number,
): number {
  const [left, right] = load.range() as [number, number];
  const ends: number[] = [];
  const runs = kindRuns(points).map(({ words, kind, isLost, fromW, toW }) => {
    const [from, to] = [load(fromW) - 5, load(toW) + 5];
    const text = cutText(words, right - left, sizePx);
    const width = textWidth(text, sizePx);
    const x = Math.max(left, Math.min(from, right + 5 - width));
    const free = ends.findIndex((end) => x >= end + 14);
    const lane = free < 0 ? ends.length : free;
    if (lane < mostLanes) ends[lane] = x + width;
    return { text, x, lane, from, to, ...inksOf(kind, isLost) };
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

function inksOf(kind: BenchPoint['kind'], isLost: boolean): { readonly bar: string; readonly ink: string } {
  if (isLost) return { bar: palette.outside, ink: palette.outside };
  return kind === 'pure sine'
    ? { bar: palette.bar, ink: palette.wave }
    : { bar: palette.ink, ink: palette.ink };
}

/** Round loads under the lowest plot; the last carries the unit. */
function drawLoadAxis(panel: Panel, load: ScaleLinear<number, number>, y: number): void {
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
