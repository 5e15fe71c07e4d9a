import type { CompareDocument, ComparedCapture } from '../../bench/compare/compareDocument.ts';
import type { Assay } from '../../verdict/assay.ts';
import { compareSentence } from '../answer/compare/compareSentence.ts';
import { isInvented } from '../answer/isInvented.ts';
import { mainFigures } from '../answer/mainFigures.ts';
import { cleanTexts } from '../cleanTexts.ts';
import { capturesHeight, drawCaptures } from '../panels/drawCaptures.ts';
import { drawCautions } from '../panels/drawCautions.ts';
import { drawNotes } from '../panels/drawNotes.ts';
import { drawTitle } from '../panels/drawTitle.ts';
import { openSheet } from '../paper/openSheet.ts';
import { page } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import { drawDifferences } from './drawDifferences.ts';
import { drawHarmonicPairs, percentsOf } from './drawHarmonicPairs.ts';
import { drawOverlay } from './drawOverlay.ts';
import { overlayWave } from './overlayWave.ts';

/** One side of an overlay: what was measured, and the wave to show. */
export type OverlaySide = Pick<Assay, 'result' | 'trace'>;

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
