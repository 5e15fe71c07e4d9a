import type { Assay } from '../../verdict/assay.ts';
import { fileName } from '../answer/fileName.ts';
import { isInvented } from '../answer/isInvented.ts';
import { mainFigures } from '../answer/mainFigures.ts';
import { cleanTexts } from '../cleanTexts.ts';
import type { CardTheme } from '../evidence/evidence.ts';
import { cutText } from '../paper/cutText.ts';
import { darkPalette, type Inks } from '../paper/darkPalette.ts';
import { fitText } from '../paper/fitText.ts';
import { openSheet } from '../paper/openSheet.ts';
import { page } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { writeLines } from '../paper/writeLines.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import { cardFigures, cardSentence, cardSubject } from './cardTexts.ts';
import { drawCardFigure } from './drawCardFigure.ts';
import { drawCardWave } from './drawCardWave.ts';

const themes: Readonly<Record<CardTheme, Inks>> = { light: palette, dark: darkPalette };

/** Baseline of what was measured, in the head. */
const subjectY = 82;
const messageY = 186;
/** Top and bottom of wave and figures. */
const bodyTop = 310;
const bodyBottom = 768;
/** Left edge of the figures. */
const figuresX = 1106;

/** In short, for whoever sees a card for some seconds. */
const caution =
  'Mains voltage can kill: use an isolated or differential probe rated for it; a scope’s ground clip is earth; never feed a building’s wiring; local codes and licensed practice come first.';
const certificate = 'One capture, not a certificate.';

/**
 * Draws a result as a card for a video or a page: one message, the wave over its ideal, two or three figures.
 *
 * @param document - a browser's, or jsdom's.
 * @param assay - what is from a capture in it is cleaned and escaped here.
 * @returns a detached element, 1920 × 1080, self-contained.
 */
export function drawCard(document: Document, assay: Assay, theme: CardTheme): SVGSVGElement {
  const { result, trace } = cleanTexts(assay);
  const inks = themes[theme];
  const message = cardSentence(result);
  const description = `A card: ${message} ${cardSubject(result)}. Capture ${fileName(result.file)}, SHA-256 ${result.sha256}. A measurement, not a certificate.`;
  const { svg, panel } = openSheet(document, message, description, { widthPx: 1920, paper: inks.paper });

  drawHead(panel(), cardSubject(result), isInvented(result), inks);
  const { lines, sizePx } = fitText(message, page.contentWidth, [88, 80, 72, 64, 56, 48], 1, 600);
  writeLines(panel(), lines, page.left, messageY, sizePx, { sizePx, weight: 600, ink: inks.ink });

  const figures = cardFigures(result);
  const waveWidth = (figures.length === 0 ? page.right : figuresX - 60) - page.left;
  const frequencyHz = mainFigures(result)?.frequencyHz.value ?? null;
  const wave = { x: page.left, y: bodyTop, width: waveWidth, height: bodyBottom - bodyTop };
  drawCardWave(panel(), trace, frequencyHz, inks, wave);
  const step = (bodyBottom - bodyTop) / Math.max(3, figures.length);
  figures.forEach((figure, i) => {
    const box = { x: figuresX, y: bodyTop + i * step, width: page.right - figuresX, height: step };
    drawCardFigure(panel(), figure, inks, box);
  });
  drawFoot(panel(), result.sha256, inks);
  return svg;
}

function drawHead(panel: Panel, subject: string, invented: boolean, inks: Inks): void {
  const mark = invented ? 'Invented data, no real unit' : '';
  const room = page.contentWidth - textWidth(mark, 26, 600) - 40;
  writeText(panel, cutText(subject, room, 32), page.left, subjectY, { sizePx: 32, ink: inks.soft });
  writeText(panel, mark, page.right, subjectY, {
    sizePx: 26,
    weight: 600,
    anchor: 'end',
    ink: inks.idealText,
  });
}

function drawFoot(panel: Panel, sha256: string, inks: Inks): void {
  panel.append('path').attr('d', `M${page.left} 802H${page.right}`).attr('stroke', inks.line);
  writeText(panel, certificate, page.left, 836, { sizePx: 24, weight: 600, ink: inks.ink });
  const digest = `SHA-256 of the capture ${sha256.slice(0, 16)}…`;
  writeText(panel, digest, page.right, 836, { sizePx: 22, anchor: 'end', ink: inks.soft });
  const said = fitText(caution, page.contentWidth, [20, 19, 18, 17], 1);
  writeLines(panel, said.lines, page.left, 868, 20, { sizePx: said.sizePx, ink: inks.soft });
}
