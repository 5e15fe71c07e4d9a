import { scaleLinear, select } from 'd3';
import type { Assay } from '../verdict/assay.ts';
import { answerSentence } from './answer/answerSentence.ts';
import { mainFigures } from './answer/mainFigures.ts';
import { questionSentence } from './answer/questionSentence.ts';
import { rankNotices } from './answer/rankNotices.ts';
import { cleanTexts } from './cleanTexts.ts';
import { captureLines } from './panels/captureLines.ts';
import { drawClaims } from './panels/drawClaims.ts';
import { drawFigures } from './panels/drawFigures.ts';
import { drawFindings } from './panels/drawFindings.ts';
import { drawFooter } from './panels/drawFooter.ts';
import { drawHarmonics } from './panels/drawHarmonics.ts';
import { drawHeader } from './panels/drawHeader.ts';
import { drawNotes } from './panels/drawNotes.ts';
import { drawResidual } from './panels/drawResidual.ts';
import { drawWave } from './panels/drawWave.ts';
import { harmonicLimits } from './panels/harmonicLimits.ts';
import { page } from './paper/page.ts';
import { palette } from './paper/palette.ts';
import { writeHeading } from './paper/writeHeading.ts';
import type { Panel } from './paper/writeText.ts';

const svgNamespace = 'http://www.w3.org/2000/svg';
/** Room left of a plot for its values. */
const axisWidth = 58;
/** The last baseline above the footer. */
const bodyBottom = 822;

/**
 * Draws a result as one page: the answer, the wave over its ideal, the residual, the harmonics with their
 * limits, the figures, the findings, and how it was measured.
 *
 * @param document - a browser's, or jsdom's; only `createElementNS` and what d3 needs of it.
 * @param assay - what is from a capture in it is cleaned and escaped here.
 * @returns a detached element, 1600 × 900, self-contained: no script, no outside reference, real text.
 */
export function drawSheet(document: Document, assay: Assay): SVGSVGElement {
  const { result, trace, method } = cleanTexts(assay);
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
  root.append('desc').text(description(result.file, result.sha256));
  root.append('rect').attr('width', page.width).attr('height', page.height).attr('fill', palette.paper);

  drawHeader(panel(root), result);

  const plot = { x: page.left + axisWidth, width: page.twoColumns - axisWidth };
  const frequencyHz = figures?.frequencyHz.value ?? null;
  const time = scaleLinear([0, trace.timeS.at(-1) ?? 1], [plot.x, plot.x + plot.width]);
  const wave = panel(root);
  writeHeading(
    wave,
    waveHeading(trace.timeS.at(-1) ?? 0, frequencyHz),
    `channel ${figures?.channel ?? 'unknown'}`,
    page.left,
    232,
    page.twoColumns,
  );
  drawWave(wave, trace, frequencyHz, time, { ...plot, y: 246, height: 186 });
  const residual = panel(root);
  writeHeading(
    residual,
    'Residual',
    'the wave minus that sine, on its own scale',
    page.left,
    466,
    page.twoColumns,
  );
  drawResidual(residual, trace, time, { ...plot, y: 476, height: 78 });

  const limits = harmonicLimits(result.findings);
  const harmonics = panel(root);
  writeHeading(
    harmonics,
    'Harmonics',
    '% of the fundamental, square-root scale',
    page.left,
    622,
    page.columnWidth,
  );
  drawHarmonics(harmonics, figures?.harmonics ?? [], limits, {
    x: page.left + 48,
    y: 640,
    width: page.columnWidth - 48,
    height: 142,
  });

  const middle = { x: page.columnX(1), y: 622, width: page.columnWidth, height: bodyBottom - 622 };
  drawFindings(panel(root), result.findings, middle);

  const right = { x: page.columnX(2), width: page.columnWidth };
  const until = (y: number) => ({ ...right, y, height: bodyBottom - y });
  let y = 232;
  if (figures !== null) y = drawFigures(panel(root), figures, until(y));
  y = drawClaims(panel(root), result.claims, until(y));
  const doubts = rankNotices(result.notices).map(({ message }) => message);
  y = drawNotes(panel(root), 'What to doubt', doubts, { ...until(y), height: 0.6 * (bodyBottom - y) });
  drawNotes(panel(root), 'How it was measured', [...method, ...captureLines(result)], until(y));

  drawFooter(panel(root), result);
  return svg;
}

function panel(root: { append(name: 'g'): Panel }): Panel {
  return root.append('g');
}

function waveHeading(durationS: number, frequencyHz: number | null): string {
  if (frequencyHz === null) return 'The record';
  const cycles = durationS * frequencyHz;
  return cycles > 1.95 ? 'Two cycles' : `${cycles.toFixed(1)} cycles`;
}

function description(file: string, sha256: string): string {
  return `One page: the wave of the capture ${file} over the sine of the same RMS, what is left between them, the harmonics, the main figures with their uncertainty, and how they stand against reference limits. SHA-256 of the capture: ${sha256}. A measurement, not a certificate.`;
}
