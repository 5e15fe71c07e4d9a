import type { CaptureEvidence } from '../../draw/evidence.ts';
import { subjectLine } from '../../draw/panels/drawTitle.ts';
import { answerSentence, titleSentence } from '../../words/answerSentence.ts';
import { claimValueText, outcomeWords } from '../../words/claimWords.ts';
import { headlineFigures } from '../../words/figureRows.ts';
import { figureText } from '../../words/quantities.ts';
import { rankNotices } from '../../words/rankNotices.ts';
import { storyWords } from '../../words/storyWords.ts';
import { fileName, shortText } from '../../words/text.ts';
import { markdownFoot, markdownPicture, markdownTable, markdownText } from './markdown.ts';

/** Longer than this no name stands in an article; the sheet has it whole. */
const longest = 300;

/**
 * A capture as Markdown to paste into an article: the answer, the picture, the figures, the claims, the
 * doubts, worst first, and by what the result can be checked.
 *
 * @param evidence - of the sheet of its wave. What is from the capture in it is cleaned and escaped here.
 * @param sheet - the sheet's file, which goes along with the text.
 */
export function captureMarkdown({ result, program }: CaptureEvidence, sheet: string): string {
  const answer = answerSentence(result);
  const stretch = storyWords(result)?.stretch;
  const file = shortText(fileName(result.file), longest);
  const figures = markdownTable(
    [
      { heading: stretch === undefined ? 'Figure' : `Figure, ${stretch}` },
      { heading: 'Value', isNumber: true },
    ],
    headlineFigures(result).map(([name, figure, unit]) => [name, figureText(figure, unit)]),
  );
  const claims = markdownTable(
    [{ heading: 'Claim' }, { heading: 'Found' }, { heading: 'Outcome' }],
    result.claims.map((claim) => [
      shortText(claim.text, longest),
      claimValueText(claim).value,
      outcomeWords(claim.outcome),
    ]),
  );
  const doubts = rankNotices(result.notices).map(({ message }) => markdownText(message));
  return [
    `**${markdownText(answer)}**`,
    markdownText(shortText(subjectLine(result), longest)),
    markdownPicture(sheet, titleSentence(result)),
    figures,
    'Each ± reads: about 95 % sure that the true value lies within.',
    ...(result.claims.length === 0 ? [] : [claims]),
    ...(doubts.length === 0
      ? []
      : [
          doubts.length === 1
            ? `Doubt: ${doubts[0]}`
            : ['Doubts:', ...doubts.map((doubt) => `- ${doubt}`)].join('\n'),
        ]),
    `Capture ${markdownText(file)}, SHA-256 \`${result.sha256}\`. Measured with sineassay ${markdownText(program)}; the sheet carries the data, and \`sineassay recheck\` checks it.`,
    markdownFoot,
  ].join('\n\n');
}
