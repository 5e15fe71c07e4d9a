import type { Assay } from '../../verdict/assay.ts';
import { fileName } from '../answer/fileName.ts';
import { isInvented } from '../answer/isInvented.ts';
import { mainFigures } from '../answer/mainFigures.ts';
import { storyWords } from '../answer/storyWords.ts';
import { cleanTexts } from '../cleanTexts.ts';
import type { CardTheme } from '../evidence/evidence.ts';
import { holdUnits } from '../numbers/holdUnits.ts';
import { cutText } from '../paper/cutText.ts';
import { darkPalette, type Inks } from '../paper/darkPalette.ts';
import { fitText } from '../paper/fitText.ts';
import { openSheet } from '../paper/openSheet.ts';
import { page } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { wrapText } from '../paper/wrapText.ts';
import { writeLines } from '../paper/writeLines.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import { periodOf } from '../step/periodOf.ts';
import { stepSubject } from '../step/stepSubject.ts';
import { cardDoubt, cardFigures, cardSentence, cardSubject } from './cardTexts.ts';
import { drawCardChange } from './drawCardChange.ts';
import { drawCardFigure } from './drawCardFigure.ts';
import { drawCardWave } from './drawCardWave.ts';

export const cardThemes: Readonly<Record<CardTheme, Inks>> = { light: palette, dark: darkPalette };

/** Baseline of what was measured, in the head; then first and last baseline of message and doubt. */
const subjectY = 82;
const messageY = { ofOne: 186, ofTwo: 150, withDoubt: 164 } as const;
const doubtY = 292;
/** Top and bottom of wave and figures, and the figures' left edge, on cards of all kinds. */
export const cardBody = { top: 310, bottom: 768, figuresX: 1106 } as const;
const { top: bodyTop, bottom: bodyBottom, figuresX } = cardBody;

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
  const { result, trace, dynamics } = cleanTexts(assay);
  const inks = cardThemes[theme];
  const message = cardSentence(result);
  const doubt = cardDoubt(result.notices);
  const doubted = doubt === null ? '' : ` Doubt: ${doubt.message}`;
  const description = `${message} A card: ${cardSubject(result)}.${doubted} Capture ${fileName(result.file)}, SHA-256 ${result.sha256}. A measurement, not a certificate.`;
  const { svg, panel } = openSheet(document, message, description, { widthPx: 1920, paper: inks.paper });

  drawCardHead(panel(), cardSubject(result), isInvented(result), inks);
  drawCardMessage(panel(), message, doubt, inks);

  const figures = cardFigures(result);
  const waveWidth = (figures.length === 0 ? page.right : figuresX - 60) - page.left;
  const frequencyHz = mainFigures(result)?.frequencyHz.value ?? null;
  const wave = { x: page.left, y: bodyTop, width: waveWidth, height: bodyBottom - bodyTop };
  const subject = dynamics === null ? null : stepSubject(result, dynamics);
  if (dynamics !== null && subject !== null)
    drawCardChange(panel(), dynamics, subject, periodOf(result), inks, wave);
  else drawCardWave(panel(), trace, frequencyHz, storyWords(result)?.stretch ?? 'as measured', inks, wave);
  const step = (bodyBottom - bodyTop) / Math.max(3, figures.length);
  figures.forEach((figure, i) => {
    const box = { x: figuresX, y: bodyTop + i * step, width: page.right - figuresX, height: step };
    drawCardFigure(panel(), figure, inks, box);
  });
  drawCardFoot(panel(), certificate, `SHA-256 of the capture ${result.sha256.slice(0, 16)}…`, inks);
  return svg;
}

/** What was measured, and that it is invented where it says so. */
export function drawCardHead(panel: Panel, subject: string, invented: boolean, inks: Inks): void {
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

/** The message in one line, else in two, and under it what makes it doubtful. */
export function drawCardMessage(
  panel: Panel,
  message: string,
  doubt: ReturnType<typeof cardDoubt>,
  inks: Inks,
): void {
  const held = holdUnits(message);
  const one = fitText(held, page.contentWidth, [88, 80, 72, 64, 56], 1, 600);
  const isCut = textWidth(held, one.sizePx, 600) > page.contentWidth;
  const sizes = [62, 56, 50, 44, 38, 34] as const;
  const { lines, sizePx } = isCut ? fitText(held, page.contentWidth, sizes, 2, 600) : one;
  const y = isCut ? messageY.ofTwo : doubt === null ? messageY.ofOne : messageY.withDoubt;
  const leading = Math.round(1.12 * sizePx);
  writeLines(panel, lines, page.left, y, leading, { sizePx, weight: 600, ink: inks.ink });
  if (doubt === null) return;
  const room = doubtY - y - (lines.length - 1) * leading;
  const said = doubtLines(doubt, room);
  const firstY = doubtY - (said.lines.length - 1) * said.leading;
  writeLines(panel, said.lines, page.left, firstY, said.leading, {
    sizePx: said.sizePx,
    weight: 600,
    ink: inks.outside,
  });
}

/** A doubt in as many lines as there is room for, whole or not at all. */
function doubtLines(
  { message, more }: NonNullable<ReturnType<typeof cardDoubt>>,
  room: number,
): { readonly lines: readonly string[]; readonly sizePx: number; readonly leading: number } {
  const whole = `Doubt: ${message}${more === '' ? '' : ` ${more}.`}`;
  for (const text of [whole, 'Doubt about these figures: it stands in the page and the JSON.']) {
    for (const sizePx of [26, 24, 22, 20]) {
      const leading = Math.round(1.2 * sizePx);
      const lines = wrapText(holdUnits(text), page.contentWidth, 9, sizePx, 600);
      if (lines.length * leading + 6 <= room) return { lines, sizePx, leading };
    }
  }
  return { lines: [], sizePx: 20, leading: 24 };
}

/** What it is not, by what it can be checked, and the cautions. */
export function drawCardFoot(panel: Panel, certificate: string, digest: string, inks: Inks): void {
  panel.append('path').attr('d', `M${page.left} 802H${page.right}`).attr('stroke', inks.line);
  writeText(panel, certificate, page.left, 836, { sizePx: 24, weight: 600, ink: inks.ink });
  writeText(panel, digest, page.right, 836, { sizePx: 22, anchor: 'end', ink: inks.soft });
  const said = fitText(caution, page.contentWidth, [20, 19, 18, 17], 1);
  writeLines(panel, said.lines, page.left, 868, 20, { sizePx: said.sizePx, ink: inks.soft });
}
