import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { answerSentence } from '../answer/answerSentence.ts';
import { isInvented } from '../answer/isInvented.ts';
import { questionSentence } from '../answer/questionSentence.ts';
import type { Panel } from '../paper/writeText.ts';
import { drawTitle } from './drawTitle.ts';
import { subjectLine } from './subjectLine.ts';

/** The first thing read: the question, the answer in one sentence, then what was measured and under which load. */
export function drawHeader(panel: Panel, result: MeasureResult): void {
  drawTitle(panel, {
    question: questionSentence(result),
    answer: answerSentence(result),
    subject: subjectLine(result),
    isInvented: isInvented(result),
  });
}
