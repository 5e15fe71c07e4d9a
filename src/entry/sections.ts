/** A result as the parts of a page, and its sentences. */

export { axisTicks } from '../draw/panels/axes.ts';
export { subjectLine } from '../draw/panels/drawTitle.ts';
export { harmonicLimits } from '../draw/panels/harmonicLimits.ts';
export { limitTables } from '../judge/limits/limitTables.ts';
export {
  claimsSection,
  courseSection,
  figuresSection,
  findingsSection,
  harmonicsSection,
  listSection,
} from '../publish/html/captureSections.ts';
export { html, Markup } from '../publish/html/html.ts';
export { captureMarkdown } from '../publish/markdown/captureMarkdown.ts';
export { answerTopics } from '../words/answerLines.ts';
export { answerSentence, isInvented, questionSentence, spokenLines } from '../words/answerSentence.ts';
export { claimsVerdict, outcomeWords } from '../words/claimWords.ts';
export { headlineFigures, mainFigures } from '../words/figureRows.ts';
export { significantText, withUnit } from '../words/numbers.ts';
export { figureText, secondsText } from '../words/quantities.ts';
export { captureLines, rankNotices } from '../words/rankNotices.ts';
export { storyWords } from '../words/storyWords.ts';
export { cleanText, cleanTexts, fileName } from '../words/text.ts';
