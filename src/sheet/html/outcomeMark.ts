import { outcomeWords } from '../answer/outcomeWords.ts';
import { html, type Markup } from './html.ts';

/** An outcome in words, in the ink of what lies outside where it is bad. */
export function outcomeMark(outcome: Parameters<typeof outcomeWords>[0]): Markup {
  return isBad(outcome)
    ? html`<strong class="outside">${outcomeWords(outcome)}</strong>`
    : html`${outcomeWords(outcome)}`;
}

/** True for what fails, probably or surely. */
export function isBad(outcome: Parameters<typeof outcomeWords>[0]): boolean {
  return outcome === 'fail' || outcome === 'conditional fail';
}
