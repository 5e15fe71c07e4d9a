import type { ClaimResult, MeasureResult } from '../../verdict/measureDocument.ts';
import { cleanTexts } from '../cleanTexts.ts';
import { capitalised } from './capitalised.ts';
import { claimsPhrase } from './claimsPhrase.ts';
import { claimsVerdict } from './claimsVerdict.ts';
import { kindPhrase } from './kindPhrase.ts';
import { underLoad } from './loadPhrase.ts';
import { storySentence } from './storySentence.ts';
import { storyWords } from './storyWords.ts';

/**
 * Two sentences to say on camera: what happened, where something did, how the claims stand, those that fail by name,
 * and what the wave is with its figure; then what the answer is not. "At 300 watts this is a sine: 2.1 % distortion,
 * give or take 0.4. One capture, not a certificate."
 */
export function spokenLines(result: MeasureResult): readonly [string, string] {
  const clean = cleanTexts(result);
  const story = storyWords(clean);
  const said =
    story === null
      ? `${claimsWords(clean.claims)}${underLoad(clean.loadSeen, kindPhrase(clean, 'a sine'), true)}.`
      : storySentence(clean, story, story.brief, true);
  return [capitalised(said), 'One capture, not a certificate.'];
}

function claimsWords(claims: readonly ClaimResult[]): string {
  const verdict = claimsVerdict(claims);
  if (verdict === null) return '';
  const all = claims.length === 1 ? 'the claim' : `the ${claims.length} claims`;
  const holds = claims.length === 1 ? 'holds' : 'hold';
  switch (verdict.outcome) {
    case 'pass':
      return `${all} ${holds}: `;
    case 'conditional pass':
      return `${all} probably ${holds}: `;
    default:
      return `${claimsPhrase(claims)}: `;
  }
}
