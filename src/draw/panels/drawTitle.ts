import type { MeasureResult } from '../../assay/measureDocument.ts';
import type { Notice } from '../../base/notice.ts';
import { answerSentence, isInvented, questionSentence } from '../../words/answerSentence.ts';
import { loadText } from '../../words/loadPhrase.ts';
import { bindUnits, significantText, withUnit } from '../../words/numbers.ts';
import { rankNotices } from '../../words/rankNotices.ts';
import { caution, fileName, noCertificate } from '../../words/text.ts';
import { page } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { cutText, fitText, type Panel, textWidth, writeLines, writeText } from '../paper/writeText.ts';

/** Shown on a sheet whose data say that they are invented. */
const inventedMark = 'Demonstration data: invented, no real unit';

/** What stands at the head of a sheet. */
interface Title {
  readonly question: string;
  /** One sentence. */
  readonly answer: string;
  /** What was measured, and under which conditions. */
  readonly subject: string;
  readonly isInvented: boolean;
}

/** The first thing read: the question, the answer in large type, then what was measured. */
export function drawTitle(panel: Panel, title: Title): void {
  const answer = fitAnswer(bindUnits(title.answer));
  const subjectY = answer.lines.length === 1 ? 174 : 183;
  const leading = Math.round(answer.sizePx * 1.14);
  const answerY = subjectY - 40 - (answer.lines.length - 1) * leading;
  writeLines(panel, answer.lines, page.left, answerY, leading, { sizePx: answer.sizePx, weight: 600 });

  const questionY = answerY - answer.sizePx - 8;
  const mark = title.isInvented ? inventedMark : '';
  const question = cutText(title.question, page.contentWidth - textWidth(mark, 17, 600) - 24, 20);
  writeText(panel, question, page.left, questionY, { sizePx: 20, ink: palette.soft });
  writeText(panel, mark, page.right, questionY, {
    sizePx: 17,
    weight: 600,
    anchor: 'end',
    ink: palette.idealText,
  });
  const subject = cutText(title.subject, page.contentWidth, 18);
  writeText(panel, subject, page.left, subjectY, { sizePx: 18, ink: palette.soft });
}

/** One large line if it fits, else two, else three. */
function fitAnswer(answer: string): ReturnType<typeof fitText> {
  const oneLine = fitText(answer, page.contentWidth, [46, 42, 38], 1, 600);
  const isCut = textWidth(answer, oneLine.sizePx, 600) > page.contentWidth;
  if (!isCut) return oneLine;
  const two = fitText(answer, page.contentWidth, [40, 36, 32, 28, 25], 2, 600);
  return two.lines.join(' ').length >= answer.length - 1
    ? two
    : fitText(answer, page.contentWidth, [25, 23, 21, 19], 3, 600);
}

/** The first thing read: the question, the answer in one sentence, then what was measured and under which load. */
export function drawHeader(panel: Panel, result: MeasureResult): void {
  drawTitle(panel, {
    question: questionSentence(result),
    answer: answerSentence(result),
    subject: subjectLine(result),
    isInvented: isInvented(result),
  });
}

/** The cautions, and the capture's name and digest, by which a reader can check the sheet. */
export function drawFooter(panel: Panel, capture: Pick<MeasureResult, 'file' | 'sha256'>): void {
  const style = { sizePx: 14, ink: palette.soft } as const;
  const fileX = drawCautions(panel);
  const digest = `SHA-256 ${capture.sha256}`;
  writeText(panel, cutText(digest, 640, 14), page.right, footY, { ...style, anchor: 'end' });
  const room = page.right - fileX - Math.min(textWidth(digest, 14), 640) - 20;
  writeText(panel, cutText(`Capture: ${fileName(capture.file)}`, room, 14), fileX, footY, style);
}

/** Baseline of the foot's last line. */
const footY = 877;

/**
 * The foot of every sheet: a rule, the caution, and what the sheet is not.
 *
 * @returns the x from which the last line is free.
 */
export function drawCautions(panel: Panel): number {
  panel.append('path').attr('d', `M${page.left} 837H${page.right}`).attr('stroke', palette.line);
  const text = cutText(caution, page.contentWidth, 14);
  writeText(panel, text, page.left, 857, { sizePx: 14, ink: palette.soft });
  writeText(panel, noCertificate, page.left, footY, { sizePx: 14, weight: 600 });
  return page.left + textWidth(noCertificate, 14, 600) + 14;
}

/** Label, load, nominal and the first reason, as far as they are known. */
export function subjectLine(result: MeasureResult): string {
  const { label, loadSeen, nominal, waveform } = result;
  const reason = waveform.kind === 'not classified' ? waveform.reasons[1] : waveform.reasons[0];
  const parts = [
    label ?? 'Unit not named',
    ...(loadSeen === undefined
      ? []
      : [loadSeen.watts === 0 ? loadText(loadSeen) : `load ${loadText(loadSeen)}`]),
    nominal === null
      ? 'no nominal voltage'
      : `${withUnit(significantText(nominal.voltageV, 4), 'V')} ${withUnit(significantText(nominal.frequencyHz, 4), 'Hz')} nominal${nominal.inferred ? ' (inferred)' : ''}`,
    ...(reason === undefined ? [] : [reason.replace(/\.$/, '')]),
  ];
  return parts.join(' · ');
}

/** What a sheet says under "What to doubt", worst first; that data are invented stands at its head already. */
export function sheetDoubts(notices: readonly Notice[]): string[] {
  return rankNotices(notices.filter(({ code }) => code !== 'data.invented')).map(({ message }) => message);
}
