import type { Assay } from '../verdict/assay.ts';
import { limitTables } from '../verdict/limits/limitTables.ts';
import type { MeasureResult } from '../verdict/measureDocument.ts';
import { fileName } from './answer/fileName.ts';
import { mainFigures } from './answer/mainFigures.ts';
import { storyWords } from './answer/storyWords.ts';
import { titleSentence } from './answer/titleSentence.ts';
import { cleanTexts } from './cleanTexts.ts';
import { drawFindings } from './panels/drawFindings.ts';
import { drawFooter } from './panels/drawFooter.ts';
import { drawHarmonics } from './panels/drawHarmonics.ts';
import { drawHeader } from './panels/drawHeader.ts';
import { drawMargin } from './panels/drawMargin.ts';
import { drawTrace } from './panels/drawTrace.ts';
import { harmonicLimits } from './panels/harmonicLimits.ts';
import { openSheet } from './paper/openSheet.ts';
import { page } from './paper/page.ts';

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
export function drawSheet(document: Document, assay: Assay): SVGSVGElement {
  const cleaned = cleanTexts(assay);
  const { result, trace } = cleaned;
  const figures = mainFigures(result);
  const stretch = storyWords(result)?.stretch ?? '';
  const { svg, panel } = openSheet(document, titleSentence(result), description(result));
  drawHeader(panel(), result);
  // The limits are for voltages: a current has none.
  const limits = figures?.unit === 'V' ? harmonicLimits(limitTables(), result.nominal) : null;

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
