import { select } from 'd3';
import type { Assay } from '../verdict/assay.ts';
import { limitTables } from '../verdict/limits/limitTables.ts';
import { answerSentence } from './answer/answerSentence.ts';
import { fileName } from './answer/fileName.ts';
import { mainFigures } from './answer/mainFigures.ts';
import { questionSentence } from './answer/questionSentence.ts';
import { cleanTexts } from './cleanTexts.ts';
import { drawFindings } from './panels/drawFindings.ts';
import { drawFooter } from './panels/drawFooter.ts';
import { drawHarmonics } from './panels/drawHarmonics.ts';
import { drawHeader } from './panels/drawHeader.ts';
import { drawMargin } from './panels/drawMargin.ts';
import { drawTrace } from './panels/drawTrace.ts';
import { harmonicLimits } from './panels/harmonicLimits.ts';
import { page } from './paper/page.ts';
import { palette } from './paper/palette.ts';
import type { Panel } from './paper/writeText.ts';

const svgNamespace = 'http://www.w3.org/2000/svg';
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
  const svg = document.createElementNS(svgNamespace, 'svg');
  const root = select(svg)
    .attr('viewBox', `0 0 ${page.width} ${page.height}`)
    .attr('width', page.width)
    .attr('height', page.height)
    .attr('role', 'img')
    .attr('lang', 'en')
    .attr('font-family', "'Source Sans 3', 'Source Sans Pro', 'Helvetica Neue', Arial, sans-serif");
  root.append('title').text(`${questionSentence(result)} ${answerSentence(result)}`);
  root.append('desc').text(description(fileName(result.file), result.sha256));
  root.append('rect').attr('width', page.width).attr('height', page.height).attr('fill', palette.paper);

  drawHeader(panel(root), result);

  // The limits are for voltages: a current has none.
  const limits = figures?.unit === 'V' ? harmonicLimits(limitTables(), result.nominal) : null;

  drawTrace(panel(root), trace, figures?.channel ?? '', figures?.frequencyHz.value ?? null, {
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
  drawHarmonics(panel(root), figures?.harmonics ?? [], limits, lower(0));
  drawFindings(panel(root), result, lower(1));
  drawMargin(panel(root), cleaned, {
    x: page.columnX(2),
    y: bodyY,
    width: page.columnWidth,
    height: bodyBottom - bodyY,
  });
  drawFooter(panel(root), result);
  return svg;
}

function panel(root: { append(name: 'g'): Panel }): Panel {
  return root.append('g');
}

function description(file: string, sha256: string): string {
  return `One page: the wave of the capture ${file} over the sine of the same RMS, what is left between them, the harmonics, the main figures with their uncertainty, and how they stand against reference limits. SHA-256 of the capture: ${sha256}. A measurement, not a certificate.`;
}
