import type { MeasureResult } from '../../assay/measureDocument.ts';
import type { CaptureEvidence } from '../../draw/evidence.ts';
import { subjectLine } from '../../draw/panels/drawTitle.ts';
import { answerSentence, isInvented, questionSentence, titleSentence } from '../../words/answerSentence.ts';
import { captureLines, rankNotices } from '../../words/rankNotices.ts';
import { storyWords } from '../../words/storyWords.ts';
import { cleanTexts, fileName, shortText } from '../../words/text.ts';
import type { OpenedSheet } from '../evidence/readEvidence.ts';
import {
  claimsSection,
  courseSection,
  figuresSection,
  findingsSection,
  harmonicsSection,
  listSection,
} from './captureSections.ts';
import { html, inlinePicture, type LinkedFile, linkList, type Markup } from './html.ts';
import { htmlPage, type PagePress } from './htmlPage.ts';
import { sortTables } from './pageScripts.ts';

/**
 * All that a capture's sheets carry as one page: the answer, the sheets, and every figure, claim, finding, harmonic
 * and doubt as tables that can be sorted and copied.
 *
 * @param sheets - of the capture, as this run drew them, that of the wave first. What is from a capture in their
 *   evidence is cleaned and escaped here.
 * @param files - what lies beside the page.
 */
export function capturePage(
  press: PagePress,
  sheets: readonly (Pick<OpenedSheet, 'picture'> & { readonly evidence: CaptureEvidence })[],
  files: readonly LinkedFile[],
): string {
  const [first] = sheets;
  if (first === undefined) throw new RangeError('A page of a capture needs its sheet');
  const { result, method, program } = cleanTexts(first.evidence);
  const answer = answerSentence(result);
  const question = questionSentence(result);
  const story = storyWords(result);
  const name = fileName(result.file);
  return htmlPage(press, {
    title: `${shortText(result.label ?? name, 60)}: ${story === null ? question : story.brief}`,
    description: titleSentence(result),
    program,
    script: sortTables,
    main: html`<header>
<p class="soft">${question}</p>
<h1>${answer}</h1>
<p class="soft">${subjectLine(result)}</p>
${isInvented(result) && html`<p><strong>Invented data, for demonstration.</strong></p>\n`}</header>
<main>
${leadingFirst(sheets, story !== null).map(inlinePicture)}${linkList(files)}<div class="columns">
<div>${figuresSection(result)}</div>
<div>
${claimsSection(result.claims)}${listSection(
  'Doubts',
  rankNotices(result.notices).map(({ message }) => message),
)}${listSection('Kind of wave', [result.waveform.kind, ...result.waveform.reasons])}${result.loadKind !== undefined && listSection('Kind of load', [result.loadKind.kind, ...result.loadKind.reasons])}${listSection('How it was measured', [...method, ...captureLines(result)])}${captureSection(result)}</div>
</div>
${courseSection(result)}${findingsSection(result.findings)}${harmonicsSection(result)}</main>`,
  });
}

/** Where something happened, the picture of that stands before the wave's. */
function leadingFirst<T extends { readonly evidence: CaptureEvidence }>(
  sheets: readonly T[],
  isStory: boolean,
): readonly T[] {
  if (!isStory) return sheets;
  const isChange = ({ evidence }: T): boolean => evidence.picture === 'changes';
  return [...sheets.filter(isChange), ...sheets.filter((sheet) => !isChange(sheet))];
}

/** By which a reader can check the page. */
function captureSection({ file, sha256 }: MeasureResult): Markup {
  return html`<section><h2>Capture</h2><p>${fileName(file)}</p><p><small>SHA-256 <code>${sha256}</code></small></p></section>
`;
}
