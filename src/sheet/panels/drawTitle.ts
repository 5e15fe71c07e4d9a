import { holdUnits } from '../numbers/holdUnits.ts';
import { cutText } from '../paper/cutText.ts';
import { fitText } from '../paper/fitText.ts';
import { page } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { writeLines } from '../paper/writeLines.ts';
import { type Panel, writeText } from '../paper/writeText.ts';

/** Shown on a sheet whose data say that they are invented. */
const inventedMark = 'Demonstration data: invented, no real unit';

/** What stands at the head of a sheet. */
export interface Title {
  readonly question: string;
  /** One sentence. */
  readonly answer: string;
  /** What was measured, and under which conditions. */
  readonly subject: string;
  readonly isInvented: boolean;
}

/** The first thing read: the question, the answer in large type, then what was measured. */
export function drawTitle(panel: Panel, title: Title): void {
  const answer = fitAnswer(holdUnits(title.answer));
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
