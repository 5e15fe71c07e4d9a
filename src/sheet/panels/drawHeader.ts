import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { answerSentence } from '../answer/answerSentence.ts';
import { fileName } from '../answer/fileName.ts';
import { questionSentence } from '../answer/questionSentence.ts';
import { significantText } from '../numbers/significantText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { cutText } from '../paper/cutText.ts';
import { fitText } from '../paper/fitText.ts';
import { page } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { writeLines } from '../paper/writeLines.ts';
import { type Panel, writeText } from '../paper/writeText.ts';

/** Shown on a sheet whose label, file, channels or notices say that the capture is invented. */
const inventedMark = 'Demonstration data: invented, no real unit';

/** The first thing read: the question, the answer in one sentence, then what was measured and under which load. */
export function drawHeader(panel: Panel, result: MeasureResult): void {
  const answer = fitAnswer(answerSentence(result));
  const subjectY = answer.lines.length === 1 ? 174 : 183;
  const leading = Math.round(answer.sizePx * 1.14);
  const answerY = subjectY - 40 - (answer.lines.length - 1) * leading;
  writeLines(panel, answer.lines, page.left, answerY, leading, { sizePx: answer.sizePx, weight: 600 });

  const questionY = answerY - answer.sizePx - 8;
  const mark = isInvented(result) ? inventedMark : '';
  const question = cutText(questionSentence(result), page.contentWidth - textWidth(mark, 17, 600) - 24, 20);
  writeText(panel, question, page.left, questionY, { sizePx: 20, ink: palette.soft });
  writeText(panel, mark, page.right, questionY, {
    sizePx: 17,
    weight: 600,
    anchor: 'end',
    ink: palette.idealText,
  });

  const subject = cutText(subjectLine(result), page.contentWidth, 18);
  writeText(panel, subject, page.left, subjectY, { sizePx: 18, ink: palette.soft });
}

/** One large line if it fits, else two. */
function fitAnswer(answer: string): ReturnType<typeof fitText> {
  const oneLine = fitText(answer, page.contentWidth, [46, 42, 38], 1, 600);
  const isCut = textWidth(answer, oneLine.sizePx, 600) > page.contentWidth;
  return isCut ? fitText(answer, page.contentWidth, [40, 36, 32, 28, 25], 2, 600) : oneLine;
}

/** Label, load, nominal and the first reason, as far as they are known. */
function subjectLine(result: MeasureResult): string {
  const { label, load, nominal, waveform } = result;
  const reason = waveform.kind === 'not classified' ? waveform.reasons[1] : waveform.reasons[0];
  const parts = [
    label ?? 'Unit not named',
    load === undefined || load === '' ? 'load unknown (not told)' : `load ${load}`,
    nominal === null
      ? 'no nominal voltage'
      : `${withUnit(significantText(nominal.voltageV, 4), 'V')} ${withUnit(significantText(nominal.frequencyHz, 4), 'Hz')} nominal${nominal.inferred ? ' (inferred)' : ''}`,
    ...(reason === undefined ? [] : [reason.replace(/\.$/, '')]),
  ];
  return parts.join(' · ');
}

function isInvented({ label, file, capture, notices }: MeasureResult): boolean {
  const told = [
    label ?? '',
    fileName(file),
    ...capture.channels.map(({ name }) => name),
    ...notices.map(({ message }) => message),
  ];
  return told.some((text) => /invented|demonstration/i.test(text));
}
