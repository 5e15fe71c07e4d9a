import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { averageMeterPhrase } from './averageMeterPhrase.ts';
import { claimsSentence } from './claimsSentence.ts';
import { courseSentence } from './courseSentence.ts';
import { findingSentence } from './findingSentence.ts';
import { mainFigures } from './mainFigures.ts';
import { powerSentence } from './powerSentence.ts';
import { rankNotices } from './rankNotices.ts';
import { storyOf } from './story.ts';

/**
 * What is worth saying beside the answer and its figures, a paragraph each, in this order: several claims, what changes
 * along the record, power, the strongest finding, what to doubt (worst first), what a meter shows.
 *
 * @param result - its texts are clean.
 */
export function answerTopics(result: MeasureResult): readonly string[] {
  const doubts = rankNotices(result.notices).map(({ message }) => message);
  return [
    isWorthListing(result) ? `Claims: ${claimsSentence(result.claims)}` : null,
    courseSentence(result),
    powerSentence(result),
    findingSentence(result.findings),
    doubts.length === 0 ? null : `Doubt: ${doubts.join(' ')}`,
    result.meter?.message ?? averageMeterPhrase(mainFigures(result)?.meter ?? null)?.sentence ?? null,
  ].filter((topic) => topic !== null);
}

/** A single claim stands in the answer; the reason why it can't be judged does too, but where something happened. */
function isWorthListing(result: MeasureResult): boolean {
  const { claims } = result;
  return claims.length > 1 || (claims[0]?.outcome === 'not judged' && storyOf(result) !== null);
}
