import type { MeasureResult } from '../../../verdict/measureDocument.ts';
import { answerSentence } from '../../answer/answerSentence.ts';
import { captureLines } from '../../answer/captureLines.ts';
import { fileName } from '../../answer/fileName.ts';
import { isInvented } from '../../answer/isInvented.ts';
import { questionSentence } from '../../answer/questionSentence.ts';
import { rankNotices } from '../../answer/rankNotices.ts';
import { shortText } from '../../answer/shortText.ts';
import { storyWords } from '../../answer/storyWords.ts';
import { titleSentence } from '../../answer/titleSentence.ts';
import { cleanTexts } from '../../cleanTexts.ts';
import type { CaptureEvidence } from '../../evidence/evidence.ts';
import type { OpenedSheet } from '../../evidence/readEvidence.ts';
import { subjectLine } from '../../panels/subjectLine.ts';
import { html, type Markup } from '../html.ts';
import { htmlPage, type PagePress } from '../htmlPage.ts';
import { inlinePicture } from '../inlinePicture.ts';
import { type LinkedFile, linkList } from '../linkedFile.ts';
import { sortTables } from '../script/sortTables.ts';
import { claimsSection } from './claimsSection.ts';
import { courseSection } from './courseSection.ts';
import { figuresSection } from './figuresSection.ts';
import { findingsSection } from './findingsSection.ts';
import { harmonicsSection } from './harmonicsSection.ts';
import { listSection } from './listSection.ts';

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
