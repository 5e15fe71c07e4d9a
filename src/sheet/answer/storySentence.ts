import type { ClaimResult, MeasureResult } from '../../verdict/measureDocument.ts';
import { claimsPhrase } from './claimsPhrase.ts';
import { kindPhrase } from './kindPhrase.ts';
import { underLoad } from './loadPhrase.ts';
import type { StoryWords } from './storyWords.ts';

/**
 * What happened with the claims that are about it, then the wave beside it with the others: "Output away for 14.2 ms:
 * “transfer < 10 ms” fails; before that at 300 W, a pure sine, 2.1 % distortion, give or take 0.4."
 *
 * @param result - its texts are clean.
 * @param lead - which of the story's leads.
 * @param spoken - a pure sine is called a sine, units of a load are spelled out.
 */
export function storySentence(
  result: MeasureResult,
  story: StoryWords,
  lead: string,
  spoken = false,
): string {
  const others = claimsPhrase(result.claims.filter((claim) => !isAboutChange(claim)));
  const wave = kindPhrase(result, spoken ? 'a sine' : 'a pure sine', true);
  const load = underLoad(result.loadSeen, '', spoken).replace(/[, ]+$/, '');
  const when = load === '' ? story.measuredThen : `${story.measuredThen} ${load}`;
  return `${changeWords(result, story, lead)}; ${when}, ${others === '' ? '' : `${others}: `}${wave}.`;
}

/** What happened, and how the claims about it stand; without a stop. */
export function changeWords({ claims }: MeasureResult, { brief }: StoryWords, lead: string): string {
  const about = claimsPhrase(claims.filter(isAboutChange), brief);
  return about === '' ? lead : `${lead}: ${about}`;
}

/** Whether a claim is about what a supply does on its way, not about the wave. */
export function isAboutChange({ quantity }: ClaimResult): boolean {
  return quantity === 'transferS' || quantity === 'powerW' || quantity === 'surgeS';
}
