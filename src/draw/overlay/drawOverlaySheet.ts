import { type ScaleLinear, scaleLinear } from 'd3';
import type { Trace, WordedAssay } from '../../assay/assay.ts';
import type { CompareDocument, ComparedCapture } from '../../bench/compare/compareDocument.ts';
import { isInvented } from '../../words/answerSentence.ts';
import { compareSentence } from '../../words/compareLines.ts';
import { mainFigures } from '../../words/figureRows.ts';
import { cleanTexts } from '../../words/text.ts';
import { drawValueAxis } from '../panels/axes.ts';
import { capturesHeight, drawCaptures } from '../panels/drawCaptures.ts';
import { drawCurve, extentOf, spanOf } from '../panels/drawCurve.ts';
import { drawNotes } from '../panels/drawNotes.ts';
import { drawCautions, drawTitle } from '../panels/drawTitle.ts';
import { type Box, openSheet, page } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { type Panel, textWidth, writeHeading, writeText } from '../paper/writeText.ts';
import { drawDifferences, drawHarmonicPairs, percentsOf } from './drawHarmonicPairs.ts';

/** One side of an overlay: what was measured, and the wave to show. */
type OverlaySide = Pick<WordedAssay, 'result' | 'trace'>;

/** Baseline of the headings under the header, and the last baseline above the footer. */
const bodyY = 228;
const bodyBottom = 820;
const lowerHeight = 158;

/**
 * Draws two captures as one page: both waves over each other, their difference, their harmonics side by side, and
 * which figures differ by more than their uncertainty.
 *
 * @param document - a browser's, or jsdom's.
 * @returns a detached element, 1600 × 900, self-contained.
 */
export function drawOverlaySheet(
  document: Document,
  sides: readonly [a: OverlaySide, b: OverlaySide],
  compared: CompareDocument,
): SVGSVGElement {
  const [a, b] = cleanTexts(sides);
  const comparison = cleanTexts(compared);
  const answer = compareSentence(comparison);
  const captures = (
    [
      ['A', comparison.a],
      ['B', comparison.b],
    ] as const
  ).map(([of, { file, sha256 }]) => ({
    ...{ of, file, sha256 },
  }));
  const digests = captures.map(({ of, sha256 }) => `${of} ${sha256}`).join(', ');
  const description = `One page: the waves of two captures over each other, their difference, their harmonics, and which figures differ by more than their uncertainty. SHA-256 of the captures: ${digests}. A measurement, not a certificate.`;
  const { svg, panel } = openSheet(document, `What differs? ${answer}`, description);
  drawTitle(panel(), {
    question: 'What differs?',
    answer,
    subject: `A: ${nameOf(comparison.a)} · B: ${nameOf(comparison.b)}`,
    isInvented: isInvented(a.result) || isInvented(b.result),
  });
  const listY = bodyBottom - capturesHeight(captures.length);
  const lowerY = listY - 30 - lowerHeight;
  const left = { x: page.left, width: page.twoColumns };
  drawWaves(panel(), a, b, { ...left, y: bodyY, height: lowerY - 34 - bodyY });
  drawHarmonicPairs(panel(), percentsOf(a.result), percentsOf(b.result), {
    ...{ ...left, y: lowerY, height: lowerHeight },
  });
  const column = { x: page.columnX(2), width: page.columnWidth };
  const margin = panel();
  const bottom = listY - 30;
  const notes = comparison.notices.map(({ message }) => message);
  const basis = comparison.sameInstrument
    ? 'One scope and probe at one setting took both, as told: what they are off by counts once'
    : 'Taken as of two instruments: their uncertainties add in squares';
  const y = drawDifferences(margin, comparison.differences, {
    ...column,
    y: bodyY,
    height: bottom - bodyY - 120,
  });
  drawNotes(margin, 'What to doubt', [basis, ...notes], { ...column, y, height: bottom - y });
  drawCaptures(panel(), captures, listY);
  drawCautions(panel());
  return svg;
}

function drawWaves(
  panel: Panel,
  a: OverlaySide,
  b: OverlaySide,
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): void {
  const [ofA, ofB] = [mainFigures(a.result), mainFigures(b.result)];
  const [fA, fB] = [ofA?.frequencyHz.value ?? null, ofB?.frequencyHz.value ?? null];
  if (fA === null || fB === null || a.trace.unit !== b.trace.unit) {
    const why =
      fA === null || fB === null ? 'One of the two has no period' : 'One is a voltage, the other a current';
    writeText(panel, `${why}: their waves can’t be laid over each other.`, box.x, box.y + 26, {
      sizePx: 16,
      ink: palette.soft,
    });
    return;
  }
  drawOverlay(panel, overlayWave(a.trace, fA), overlayWave(b.trace, fB), a.trace.unit, box);
}

function nameOf({ label, load, file }: ComparedCapture): string {
  const told = [label, load].filter((text) => text !== undefined && text !== '');
  return told.length === 0 ? (file.split(/[\\/]/).at(-1) ?? file) : told.join(', ');
}

/** Room left of the plots for their values, below them for the cycles. */
const axisWidth = 58;
const cyclesHeight = 24;
const differenceHeight = 84;
const headingHeight = 44;

/**
 * Two waves over each other, each by its own cycles from a rising zero, and their difference below.
 *
 * @param unit - of both.
 * @param box - its top is the heading's baseline.
 */
function drawOverlay(panel: Panel, a: OverlayWave, b: OverlayWave, unit: 'V' | 'A', box: Box): void {
  const plot = { x: box.x + axisWidth, width: box.width - axisWidth };
  const cycle = scaleLinear(spanOf(a.cycles, b.cycles), [plot.x, plot.x + plot.width]);
  const bottom = box.y + box.height - cyclesHeight;
  const waveBottom = bottom - differenceHeight - headingHeight;
  writeHeading(panel, 'Both waves', 'each by its own cycles, from a rising zero', box.x, box.y, box.width);
  nameWaves(panel, box);
  const waveBox = { ...plot, y: box.y + 30, height: waveBottom - box.y - 30 };
  const value = scaleLinear(extentOf(a.wave, b.wave), [waveBox.y + waveBox.height - 4, waveBox.y + 4]);
  drawValueAxis(panel, value, waveBox, unit, 40);
  // A broad pale line under a thin dark one: both stay visible where they coincide, in grey too.
  drawCurve(panel, a.cycles, a.wave, cycle, value, palette.ideal, 7);
  drawCurve(panel, b.cycles, b.wave, cycle, value, palette.wave, 2.2);

  const difference = waveDifference(a, b);
  const heading = waveBottom + headingHeight - 18;
  writeHeading(panel, 'B − A', 'wave by wave, on a scale of its own', box.x, heading, box.width);
  const reach = Math.max(...extentOf(difference).map(Math.abs)) || 1;
  const differenceBox = { ...plot, y: bottom - differenceHeight, height: differenceHeight };
  const scale = scaleLinear([-reach, reach], [bottom - 2, differenceBox.y + 2]);
  drawValueAxis(panel, scale, differenceBox, unit, 28);
  drawCurve(panel, a.cycles, difference, cycle, scale, palette.ink, 1.4);
  drawCycles(panel, cycle, bottom);
}

/** Which is which, in its own ink, right of the heading. */
function nameWaves(panel: Panel, { x, y, width }: Box): void {
  const style = { sizePx: 16, weight: 600, anchor: 'end' } as const;
  const right = x + width;
  writeText(panel, 'B, thin', right, y, { ...style, ink: palette.wave });
  const left = right - textWidth('B, thin', 16, 600) - 22;
  writeText(panel, 'A, broad', left, y, { ...style, ink: palette.idealText });
}

function drawCycles(panel: Panel, cycle: ScaleLinear<number, number>, y: number): void {
  const ticks = cycle.ticks(8);
  for (const tick of ticks) {
    const text = tick === ticks.at(-1) ? `${tick} cycles` : String(tick);
    const anchor = tick === ticks.at(-1) ? 'end' : 'middle';
    writeText(panel, text, cycle(tick), y + 20, { sizePx: 14, ink: palette.soft, anchor });
    panel
      .append('path')
      .attr('d', `M${cycle(tick).toFixed(1)} ${y}v5`)
      .attr('stroke', palette.line);
  }
}

/** A wave laid out by its own cycles, so that two of different frequencies lie over each other. */
interface OverlayWave {
  /** Cycles from a rising zero of the fundamental, ascending; shape N. */
  readonly cycles: Float64Array;
  /** In the channel's unit; NaN where there is no value; shape N. */
  readonly wave: Float64Array;
}

/** @param frequencyHz - of the fundamental, > 0. */
export function overlayWave({ timeS, wave }: Trace, frequencyHz: number): OverlayWave {
  return { cycles: timeS.map((t) => t * frequencyHz), wave };
}

/**
 * b − a at the instants of a, b taken straight between its neighbours.
 *
 * @returns shape of a; NaN where either has no value or b doesn't reach.
 */
export function waveDifference(a: OverlayWave, b: OverlayWave): Float64Array {
  let right = 1;
  return a.cycles.map((cycle, i) => {
    while (right < b.cycles.length - 1 && b.cycles[right]! < cycle) right++;
    const [from, to] = [b.cycles[right - 1], b.cycles[right]];
    if (from === undefined || to === undefined || cycle < from || cycle > to) return Number.NaN;
    const share = to > from ? (cycle - from) / (to - from) : 0;
    const [low, high] = [b.wave[right - 1]!, b.wave[right]!];
    return low + share * (high - low) - a.wave[i]!;
  });
}

/**
 * What the sheet of two captures over each other is called, without the ending.
 *
 * @param files - names of the captures, folders before them or not.
 * @example overlayName(['captures/a-300w.csv', 'b 300w.csv']) // 'compare-a-300w-b_300w'
 */
export function overlayName(files: readonly [a: string, b: string]): string {
  return `compare-${files.map(stemOf).join('-')}`;
}

/** A file's name without folder and ending, of characters that every file system takes. */
function stemOf(file: string): string {
  return file
    .replace(/^.*[\\/]/, '')
    .replace(/(?<=.)\.[^.]*$/, '')
    .replaceAll(/[^\p{L}\p{N}_.-]+/gu, '_')
    .slice(0, 80);
}
