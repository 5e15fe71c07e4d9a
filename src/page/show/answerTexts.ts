import type { MeasureResult } from '../../entry/measuring.ts';
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
  Markup,
  questionSentence,
  rankNotices,
  spokenLines,
  subjectLine,
} from '../../entry/sections.ts';
import type { MeasuredChannel } from '../worker/requests.ts';

/** What the page says of a result, apart from its pictures. */
interface AnswerTexts {
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
export function answerTexts({ shown, method }: MeasuredChannel): AnswerTexts {
  const result = cleanTexts(shown);
  const linked = (text: string): Markup => linkedTimes(html`${text}`, result);
  const notices = rankNotices(result.notices).map(({ message }) => message);
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

/** A time, with or without a doubt: "0.205 ± 0.001 s", "−50.0 ms". */
const time = /([−-]?\d[\d.]*)(?:[ \u00a0]±[ \u00a0][\d.]+)?[ \u00a0\u202f]?(s|ms|µs)(?![\w/²])/g;
/** What tells an instant from a duration: the word before it, or the end of a stretch behind it. */
const before = /\b(?:at|from|to|until) $/i;
const behind = /^ to [−-]?\d/;
const seconds: Readonly<Record<string, number>> = { s: 1, ms: 1e-3, µs: 1e-6 };

/**
 * Makes links of the times that a result's sentences name and that lie within its record, for the picture of the
 * wave to go to: `data-at` holds the time in seconds on the file's own axis.
 */
export function linkedTimes({ text }: Markup, { capture: { startS, durationS } }: MeasureResult): Markup {
  const linked = (words: string): string =>
    words.replace(time, (whole: string, digits: string, unit: string, at: number) => {
      if (!before.test(words.slice(0, at)) && !behind.test(words.slice(at + whole.length))) return whole;
      const atS = Number(digits.replace('−', '-')) * seconds[unit]!;
      // Times are named to three digits: one at the record's end may seem to lie beyond it.
      const slack = 1e-2 * durationS;
      if (!(atS >= startS - slack && atS <= startS + durationS + slack)) return whole;
      return `<a class="time" href="#wave-part" data-at="${atS}">${whole}</a>`;
    });
  return new Markup(text.replace(/(^|>)([^<]+)/g, (_, tag: string, words: string) => tag + linked(words)));
}

/** What a select offers: a value and its words each. Left alone where it offers that already. */
export function setChoices(
  select: HTMLSelectElement,
  choices: readonly (readonly [value: string, words: string])[],
  chosen: string,
): void {
  const offered = [...select.options];
  const isSame =
    offered.length === choices.length &&
    choices.every(([value, words], i) => offered[i]?.value === value && offered[i]?.text === words);
  if (!isSame) select.replaceChildren(...choices.map(([value, words]) => new Option(words, value)));
  select.value = chosen;
}
