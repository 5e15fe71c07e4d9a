import type { BenchDocument, BenchUnit } from '../../bench/benchDocument.ts';
import { isInvented } from '../../words/answerSentence.ts';
import { comparisonSentence, endPoint } from '../../words/bench/comparisonSentence.ts';
import { claimValueText, outcomeWords, worstClaims } from '../../words/claimWords.ts';
import { bindUnits, significantText, withUnit } from '../../words/numbers.ts';
import { cleanTexts, shortText, spelledUnits } from '../../words/text.ts';
import { capturesHeight, drawCaptures, type ListedCapture } from '../panels/drawCaptures.ts';
import { drawCautions, drawTitle } from '../panels/drawTitle.ts';
import { openSheet, page } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import {
  cutText,
  type Panel,
  svgText,
  textWidth,
  wrapText,
  writeLines,
  writeText,
} from '../paper/writeText.ts';
import { kindRuns } from '../sweep/sweepRows.ts';
import { dotColumns, drawDotColumn } from './dotColumns.ts';

/** Units side by side as the text of one self-contained SVG file (see `drawComparisonSheet`). */
export function comparisonSvg(document: Document, bench: BenchDocument): string {
  return svgText(drawComparisonSheet(document, bench));
}

/** Units on one page: more would be too small to read. */
const mostUnits = 6;
/** Baseline of the columns' headings, and where their rows start. */
const headY = 228;
const rowsTop = 256;
const mostRowHeight = 116;
/** Room under the rows for their axis, and the last baseline above the foot. */
const axisHeight = 54;
const bodyBottom = 822;
const nameWidth = 330;
const claimsWidth = 250;
const gutter = 34;
const spokenHeading = 'To say on camera';
const spokenX = page.left + textWidth(spokenHeading, 17, 600) + 12;
const spokenLeading = 19;

/**
 * Draws units side by side as one page: a row a unit, with its kinds of wave, its voltage and distortion at no load
 * and at full load, its efficiency and how its claims stand, each figure on one scale for all.
 *
 * @param document - a browser's, or jsdom's.
 * @param bench - what is from a file or a plan in it is cleaned and escaped here.
 * @returns a detached element, 1600 × 900, self-contained.
 */
export function drawComparisonSheet(document: Document, bench: BenchDocument): SVGSVGElement {
  const { units: all, failures } = cleanTexts(bench);
  const units = all.slice(0, mostUnits);
  const question = 'Which unit holds its voltage and its wave best?';
  const answer = bindUnits(comparisonSentence(units));
  const { svg, panel } = openSheet(
    document,
    `${question} ${answer}`,
    `One page: ${units.length} units side by side, with voltage and distortion at no load and full load, the kind of wave, and how their claims stand. A measurement, not a certificate.`,
  );
  const subject = [
    units.length === 1 ? 'one unit' : `${units.length} units`,
    ...(all.length > units.length ? [`${all.length - units.length} more not shown`] : []),
    'bars and ± read: about 95 % sure',
    ...(failures.length === 0 ? [] : [`${failures.length} captures could not be measured`]),
  ].join(' · ');
  drawTitle(panel(), { question, answer, subject, isInvented: units.some(isInvented) });
  const captures = units.flatMap(endCaptures);
  const capturesY = bodyBottom - capturesHeight(captures.length);
  const said = spokenLines(`${spelledUnits(answer)} One evening’s captures, not a certificate.`);
  const sayY = capturesY - 28 - spokenLeading * (said.length - 1);
  drawUnits(panel(), units, sayY - axisHeight);
  drawSpoken(panel(), said, sayY);
  drawCaptures(panel(), captures, capturesY);
  drawCautions(panel());
  return svg;
}

function drawUnits(panel: Panel, units: readonly BenchUnit[], lowest: number): void {
  const height = Math.min(mostRowHeight, (lowest - rowsTop) / Math.max(1, units.length));
  const middles = units.map((_, i) => rowsTop + (i + 0.5) * height);
  const bottom = rowsTop + units.length * height;
  const columns = dotColumns(units);
  const shared = columns.reduce((sum, { share }) => sum + share, 0);
  const room = page.contentWidth - nameWidth - claimsWidth - (columns.length + 1) * gutter;
  const claimsX = page.right - claimsWidth;

  for (let i = 0; i <= units.length; i++) {
    const y = (rowsTop + i * height).toFixed(1);
    panel.append('path').attr('d', `M${page.left} ${y}H${page.right}`).attr('stroke', palette.line);
  }
  drawHead(panel, 'Unit', 'and its kind of wave', page.left, nameWidth);
  let x = page.left + nameWidth + gutter;
  for (const column of columns) {
    const width = (column.share / shared) * room;
    drawHead(panel, column.heading, column.aside, x, width);
    drawDotColumn(panel, column, middles, { x, y: rowsTop, width, height: bottom - rowsTop });
    x += width + gutter;
  }
  drawHead(panel, 'Claims', 'and the one that stands worst', claimsX, claimsWidth);
  units.forEach((unit, i) => {
    drawUnitName(panel, unit, page.left, middles[i]!, nameWidth);
    drawUnitClaims(panel, unit, claimsX, middles[i]!, claimsWidth);
  });
}

/** A column's heading with its explanation under it. */
function drawHead(panel: Panel, heading: string, aside: string, x: number, width: number): void {
  writeText(panel, cutText(heading, width, 17, 600), x, headY, { sizePx: 17, weight: 600 });
  writeText(panel, cutText(aside, width, 14), x, headY + 18, { sizePx: 14, ink: palette.soft });
}

/** What is said is never cut: as many lines as it takes. */
function spokenLines(said: string): readonly string[] {
  return wrapText(said, page.right - spokenX, Number.POSITIVE_INFINITY, 16);
}

function drawSpoken(panel: Panel, lines: readonly string[], sayY: number): void {
  writeText(panel, spokenHeading, page.left, sayY, { sizePx: 17, weight: 600 });
  writeLines(panel, lines, spokenX, sayY, spokenLeading, { sizePx: 16, ink: palette.soft });
}

/** The two captures of a unit that the dots are of. */
function endCaptures(unit: BenchUnit): ListedCapture[] {
  return (['noLoad', 'fullLoad'] as const).flatMap((end) => {
    const point = endPoint(unit, end);
    if (point === null) return [];
    const load =
      point.loadW.value === null ? '' : `, ${withUnit(significantText(point.loadW.value, 4), 'W')}`;
    return [{ file: point.file, sha256: point.sha256, of: `${unit.name}${load}` }];
  });
}

/** Three lines a cell: one in strong type, two below. */
const first = -12;
const second = 8;
const leading = 17;

/** A unit's name, and under it the kinds of wave from no load up. */
function drawUnitName(panel: Panel, unit: BenchUnit, x: number, middle: number, width: number): void {
  const name = unit.earlier === undefined ? unit.label : `${shortText(unit.label, 60)}, earlier`;
  writeText(panel, cutText(name, width, 17, 600), x, middle + first, { sizePx: 17, weight: 600 });
  const kinds = wrapText(kindWords(unit), width, 2, 15);
  writeLines(panel, kinds, x, middle + second, leading, { sizePx: 15, ink: palette.soft });
}

/** How many of a unit's claims hold, and under it the one that stands worst. */
function drawUnitClaims(panel: Panel, { claims }: BenchUnit, x: number, middle: number, width: number): void {
  if (claims.length === 0) {
    writeText(panel, 'no claim told', x, middle + first, { sizePx: 16, ink: palette.soft });
    return;
  }
  const hold = claims.filter(({ outcome }) => outcome === 'pass' || outcome === 'conditional pass').length;
  const isBad = claims.some(({ outcome }) => outcome === 'fail' || outcome === 'conditional fail');
  const unsure = claims.filter(({ outcome }) => outcome === 'conditional pass').length;
  const all = `${hold} of ${claims.length} ${hold === 1 ? 'holds' : 'hold'}`;
  const total = unsure === 0 ? all : `${all}, ${unsure} only probably`;
  writeText(panel, cutText(total, width, 17, 600), x, middle + first, {
    sizePx: 17,
    weight: 600,
    ink: isBad ? palette.outside : palette.ink,
  });
  const [worst] = worstClaims(claims);
  if (worst === undefined || worst.outcome === 'pass') return;
  const found = claimValueText(worst).value;
  const text = `“${shortText(worst.text, 40)}” ${outcomeWords(worst.outcome)}: ${found}`;
  writeLines(panel, wrapText(text, width, 2, 15), x, middle + second, leading, {
    sizePx: 15,
    ink: palette.soft,
  });
}

/** "pure sine to 900 W; distorted sine to 1500 W"; one kind alone needs no load. */
function kindWords({ points }: BenchUnit): string {
  const runs = kindRuns(points);
  if (runs.length === 0) return points[0]?.kind ?? 'not measured at a steady load';
  if (runs.length === 1) return runs[0]!.words;
  return runs.map(({ words, toW }) => `${words} to ${withUnit(significantText(toW, 4), 'W')}`).join('; ');
}
