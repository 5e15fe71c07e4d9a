import type { WordedAssay } from '../assay/assay.ts';
import type { MeasureResult } from '../assay/measureDocument.ts';
import { limitTables } from '../judge/limits/limitTables.ts';
import { titleSentence } from '../words/answerSentence.ts';
import { mainFigures } from '../words/figureRows.ts';
import { storyWords } from '../words/storyWords.ts';
import { cleanTexts, fileName } from '../words/text.ts';
import { drawFindings } from './panels/drawFindings.ts';
import { drawHarmonics } from './panels/drawHarmonics.ts';
import { drawMargin } from './panels/drawMargin.ts';
import { drawFooter, drawHeader } from './panels/drawTitle.ts';
import { drawTrace } from './panels/drawTrace.ts';
import { harmonicLimits } from './panels/harmonicLimits.ts';
import { openSheet, page } from './paper/page.ts';
import { svgText } from './paper/writeText.ts';

/** A result as the text of one self-contained SVG file (see `drawSheet`); the same assay gives the same text. */
export function sheetSvg(document: Document, assay: WordedAssay): string {
  return svgText(drawSheet(document, assay));
}

/** Baseline of the headings under the header. */
const bodyY = 228;
/** Where the times under the residual end. */
const traceBottom = 568;
/** Baseline of the lower panels' headings. */
const lowerY = 604;
/** The last baseline above the footer. */
const bodyBottom = 820;

/**
 * Draws a result as one page: the answer, the wave over its ideal, the residual, the harmonics with their
 * limits, the figures, the findings, and how it was measured.
 *
 * @param document - a browser's, or jsdom's; only `createElementNS` and what d3 needs of it.
 * @param assay - what is from a capture in it is cleaned and escaped here.
 * @returns a detached element, 1600 × 900, self-contained: no script, no outside reference, real text.
 */
export function drawSheet(document: Document, assay: WordedAssay): SVGSVGElement {
  const cleaned = cleanTexts(assay);
  const { result, trace } = cleaned;
  const figures = mainFigures(result);
  const stretch = storyWords(result)?.stretch ?? '';
  const { svg, panel } = openSheet(document, titleSentence(result), description(result));
  drawHeader(panel(), result);
  // The limits are for voltages, a current has none; nor has what no limit was held against.
  const limits =
    figures?.unit === 'V' && result.findings.length > 0
      ? harmonicLimits(limitTables(), result.nominal)
      : null;

  drawTrace(panel(), trace, figures?.channel ?? '', figures?.frequencyHz.value ?? null, stretch, {
    x: page.left,
    y: bodyY,
    width: page.twoColumns,
    height: traceBottom - bodyY,
  });
  const lower = (column: 0 | 1) => ({
    x: page.columnX(column),
    y: lowerY,
    width: page.columnWidth,
    height: bodyBottom - lowerY,
  });
  drawHarmonics(panel(), figures?.harmonics ?? [], limits, lower(0));
  drawFindings(panel(), result, lower(1));
  drawMargin(panel(), cleaned, {
    x: page.columnX(2),
    y: bodyY,
    width: page.columnWidth,
    height: bodyBottom - bodyY,
  });
  drawFooter(panel(), result);
  return svg;
}

function description(result: MeasureResult): string {
  const story = storyWords(result);
  const lead = story === null ? '' : `${story.lead}. `;
  const stretch = story === null ? '' : ` ${story.stretch}`;
  return `${lead}One page: the wave of the capture ${fileName(result.file)}${stretch} over the sine of the same RMS, what is left between them, the harmonics, the main figures with their uncertainty, and how they stand against reference limits. SHA-256 of the capture: ${result.sha256}. A measurement, not a certificate.`;
}
