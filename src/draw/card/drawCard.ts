import type { WordedAssay } from '../../assay/assay.ts';
import type { MeasureResult } from '../../assay/measureDocument.ts';
import type { Figure } from '../../base/figure.ts';
import type { Notice } from '../../base/notice.ts';
import { isInvented } from '../../words/answerSentence.ts';
import { claimsPhrase, claimsVerdict, outcomeWords } from '../../words/claimWords.ts';
import { type MainFigures, mainFigures } from '../../words/figureRows.ts';
import { kindName, unclassified } from '../../words/kindPhrase.ts';
import { loadText } from '../../words/loadPhrase.ts';
import { bindUnits } from '../../words/numbers.ts';
import { isGrave, rankNotices } from '../../words/rankNotices.ts';
import { storyOf } from '../../words/story.ts';
import { changeWords, isAboutChange, storyWords } from '../../words/storyWords.ts';
import { capitalised, cleanTexts, fileName, shortText } from '../../words/text.ts';
import type { CardTheme } from '../evidence.ts';
import { openSheet, page } from '../paper/page.ts';
import { darkPalette, type Inks, palette } from '../paper/palette.ts';
import {
  cutText,
  fitText,
  type Panel,
  textWidth,
  wrapText,
  writeLines,
  writeText,
} from '../paper/writeText.ts';
import { periodOf, stepSubject } from '../step/stepPicture.ts';
import { drawCardChange, drawCardFigure, drawCardWave } from './cardParts.ts';
import { type CardFigure, storyFigures } from './storyFigures.ts';

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
export function drawCard(document: Document, assay: WordedAssay, theme: CardTheme): SVGSVGElement {
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
  const held = bindUnits(message);
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
      const lines = wrapText(bindUnits(text), page.contentWidth, 9, sizePx, 600);
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

/** The one message of a card: what happened, else the kind of wave: "This is a modified sine, not a sine." */
export function cardSentence(result: MeasureResult): string {
  const story = storyWords(result);
  if (story !== null) return `${changeWords(result, story, story.brief)}.`;
  const { waveform, voltage } = result;
  const name = kindName(waveform);
  const subject = voltage === undefined ? 'This current' : 'This';
  if (name === null) return `${capitalised(unclassified(result))}.`;
  return `${subject} is ${name}${waveform.atTheEdge ? ', at the edge' : ''}.`;
}

/** Which unit, under which load, and how the claims stand, as far as the message does not tell it. */
export function cardSubject(result: MeasureResult): string {
  const { label, loadSeen, claims } = result;
  const told = label === undefined ? [] : [label];
  const load = loadSeen === undefined ? '' : loadText(loadSeen);
  const story = storyWords(result);
  if (story !== null) {
    const others = claimsPhrase(claims.filter((claim) => !isAboutChange(claim)));
    const wave = kindName(result.waveform) ?? 'a wave that can’t be classified';
    const before = `${capitalised(story.measuredThen)}${load === '' ? '' : `, ${load}`}: ${others === '' ? wave : others}`;
    return [...told, before].join(' · ');
  }
  const [first] = claimsVerdict(claims)?.claims ?? [];
  const judged = first === undefined ? [] : [`“${shortText(first.text, 40)}” ${outcomeWords(first.outcome)}`];
  return [...told, ...(load === '' ? [] : [capitalised(load)]), ...judged].join(' · ');
}

/** The two or three numbers that carry the message. */
export function cardFigures(result: MeasureResult): readonly CardFigure[] {
  const figures: MainFigures | null = mainFigures(result);
  const story = storyOf(result);
  const led = story === null ? [] : storyFigures(story);
  if (figures === null) return led;
  const { value: dwellPercent } = figures.dwellPercent;
  const stretch = storyWords(result)?.stretch;
  const beside = (name: string): string => (stretch === undefined ? name : `${name} ${stretch}`);
  const quantity = figures.unit === 'V' ? 'voltage' : 'current';
  const rms = {
    name: stretch === undefined ? `true RMS ${quantity}` : `RMS ${quantity} ${stretch}`,
    figure: figures.rms,
    unit: figures.unit,
  };
  const thd = { name: beside('total harmonic distortion'), figure: figures.thdPercent, unit: '%' };
  if (led.length > 0) return [...led, rms, { ...thd, name: beside('distortion') }].slice(0, 3);
  return [
    thd,
    ...(result.waveform.kind === 'modified sine' && dwellPercent !== null
      ? [{ name: 'of the time at zero', figure: whole(dwellPercent), unit: '%' }]
      : []),
    rms,
    { name: 'frequency', figure: figures.frequencyHz, unit: 'Hz' },
  ].slice(0, 3);
}

/**
 * The doubt that may make every number of a card wrong, and how many more stand elsewhere; null where there is none so
 * grave: a card is no place for the others.
 */
export function cardDoubt(
  notices: readonly Notice[],
): { readonly message: string; readonly more: string } | null {
  const [worst] = rankNotices(notices);
  if (worst === undefined || !isGrave(worst)) return null;
  const others = notices.filter(({ code }) => code !== 'data.invented').length - 1;
  const more =
    others < 1 ? '' : `${others} more ${others === 1 ? 'doubt' : 'doubts'} in the page and the JSON`;
  return { message: worst.message, more };
}

/** The share has no uncertainty of its own: its whole percent are what edges leave sure. */
function whole(percent: number): Figure {
  return { value: Math.round(percent), uncertainty: 0 };
}
