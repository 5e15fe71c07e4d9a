import type { ClaimResult, MeasureResult } from '../../verdict/measureDocument.ts';
import { cleanTexts } from '../cleanTexts.ts';
import { capitalised } from './capitalised.ts';
import { quoted } from './claimsPhrase.ts';
import { claimsVerdict } from './claimsVerdict.ts';
import { claimValueText } from './claimValueText.ts';
import { kindPhrase } from './kindPhrase.ts';
import { underLoad } from './loadPhrase.ts';
import { storySentence } from './storySentence.ts';
import { storyWords } from './storyWords.ts';

/**
 * The answer in one sentence, the same on the sheet and in the terminal: what happened, where something did, then how
 * the claims stand, then what the wave is.
 *
 * "Output lost 0.14 s after 1500 W came on; before that, “pure sine” holds: a pure sine, distortion not above 0.31 %."
 * "Yes, at 300 W resistive this is a pure sine: 2.1 % distortion, give or take 0.4."
 */
export function answerSentence(result: MeasureResult): string {
  const clean = cleanTexts(result);
  const story = storyWords(clean);
  if (story !== null) return storySentence(clean, story, story.lead);
  return capitalised(`${claimsLead(clean.claims)}${underLoad(clean.loadSeen, kindPhrase(clean))}.`);
}

/** How the claims stand, to go before what the wave is. A single one about the kind is answered by what follows. */
function claimsLead(claims: readonly ClaimResult[]): string {
  const verdict = claimsVerdict(claims);
  const [first] = verdict?.claims ?? [];
  if (verdict === null || first === undefined) return '';
  if (first.outcome === 'pass') return 'Yes, ';
  if (claims.length > 1) return severalLead(verdict.claims, first);
  const found = typeof first.value === 'string' ? '' : claimValueText(first).named;
  switch (first.outcome) {
    case 'conditional pass':
      return `it probably holds: ${found === '' ? '' : `${found}; `}`;
    case 'conditional fail':
      return `it probably fails: ${found === '' ? '' : `${found}; `}`;
    case 'not judged':
      return `can’t be told, ${found === '' ? '' : `${found}; `}`;
    case 'fail':
      return `no, ${found === '' ? '' : `${found}; `}`;
  }
}

/** Of several claims those that decide are named, the first of them by its text. */
function severalLead(deciding: readonly ClaimResult[], first: ClaimResult): string {
  const others = deciding.length - 1;
  const who = others === 0 ? quoted(first) : `${quoted(first)} and ${others} more`;
  const one = others === 0;
  switch (first.outcome) {
    case 'fail':
      return `no, ${who} ${one ? 'fails' : 'fail'}; `;
    case 'conditional fail':
      return `${who} probably ${one ? 'fails' : 'fail'}; `;
    case 'not judged':
      return `can’t be told, ${who} can’t be judged; `;
    default:
      return `${who} only probably ${one ? 'holds' : 'hold'}; `;
  }
}
