import {
  answerSentence,
  answerTopics,
  captureLines,
  claimsSection,
  cleanTexts,
  courseSection,
  figuresSection,
  figureText,
  fileName,
  findingsSection,
  harmonicsSection,
  headlineFigures,
  html,
  isInvented,
  listSection,
  type Markup,
  questionSentence,
  rankNotices,
  spokenLines,
  subjectLine,
} from '../../entry/sections.ts';
import type { MeasuredChannel } from '../worker/requests.ts';
import { linkedTimes } from './linkedTimes.ts';
import { pageWords } from './pageWords.ts';

/** What the page says of a result, apart from its pictures. */
export interface AnswerTexts {
  readonly question: string;
  readonly answer: Markup;
  readonly subject: string;
  readonly isInvented: boolean;
  readonly say: string;
  /** The figures by which it is known, and what else is worth saying. */
  readonly headline: Markup;
  /** What changes along the record; empty for a steady one. */
  readonly course: Markup;
  readonly parts: Markup;
}

/** A result in words and tables; times that it names become links to the picture of the wave. */
export function answerTexts({ result: raw, method }: MeasuredChannel): AnswerTexts {
  const result = cleanTexts(raw);
  const linked = (text: string): Markup => linkedTimes(html`${pageWords(text)}`, result);
  const notices = rankNotices(result.notices).map(({ message }) => pageWords(message));
  return {
    question: questionSentence(result),
    answer: linked(answerSentence(result)),
    subject: subjectLine(result),
    isInvented: isInvented(result),
    say: spokenLines(result).join(' '),
    headline: html`<dl class="headline">${headlineFigures(result).map(
      ([name, figure, unit]) => html`<div><dt>${name}</dt><dd>${figureText(figure, unit)}</dd></div>`,
    )}</dl>
${answerTopics(result).map(
  (topic) => html`<p>${linked(topic)}</p>
`,
)}`,
    course: linkedTimes(courseSection(result), result),
    parts: linkedTimes(
      html`<div class="columns">
<div>${figuresSection(result)}</div>
<div>
${claimsSection(result.claims)}${listSection('Doubts', notices)}${listSection('Kind of wave', [
  result.waveform.kind,
  ...result.waveform.reasons,
])}${result.loadKind !== undefined && listSection('Kind of load', [result.loadKind.kind, ...result.loadKind.reasons])}${listSection(
  'How it was measured',
  [...method, ...captureLines(result)],
)}<section><h2>Capture</h2><p>${fileName(result.file)}</p><p><small>SHA-256 <code>${result.sha256}</code></small></p></section>
</div>
</div>
${folded('All findings against reference limits', findingsSection(result.findings))}<div id="harmonics-table">${folded('Harmonics as a table', harmonicsSection(result))}</div>`,
      result,
    ),
  };
}

/** What is long and seldom wanted, to be opened; nothing where there is nothing. */
function folded(words: string, part: Markup): Markup {
  return part.text === ''
    ? part
    : html`<details><summary>${words}</summary>${part}</details>
`;
}
