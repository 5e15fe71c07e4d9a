import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { answerSentence } from '../answer/answerSentence.ts';
import { isInvented } from '../answer/isInvented.ts';
import { questionSentence } from '../answer/questionSentence.ts';
import { significantText } from '../numbers/significantText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import type { Panel } from '../paper/writeText.ts';
import { drawTitle } from './drawTitle.ts';

/** The first thing read: the question, the answer in one sentence, then what was measured and under which load. */
export function drawHeader(panel: Panel, result: MeasureResult): void {
  drawTitle(panel, {
    question: questionSentence(result),
    answer: answerSentence(result),
    subject: subjectLine(result),
    isInvented: isInvented(result),
  });
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
