import type { MeasureResult } from '../assay/measureDocument.ts';
import type { Notice } from '../base/notice.ts';
import type { ClaimResult } from '../judge/claims/claim.ts';
import { claimsPhrase, claimsVerdict, claimValueText, quoted } from './claimWords.ts';
import { kindPhrase } from './kindPhrase.ts';
import { underLoad } from './loadPhrase.ts';
import { storyOf } from './story.ts';
import { storySentence, storyWords } from './storyWords.ts';
import { capitalised, cleanTexts, shortText } from './text.ts';

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

/** Question and answer in one line; where something happened, that comes first, and so without the question. */
export function titleSentence(result: MeasureResult): string {
  const answer = answerSentence(result);
  return storyOf(result) === null ? `${questionSentence(result)} ${answer}` : answer;
}

/** The question that a result answers: whether what was claimed holds, else what happened, else what the wave is. */
export function questionSentence(
  result: Pick<MeasureResult, 'claims' | 'events' | 'steps' | 'excursions'>,
): string {
  const [first, ...others] = cleanTexts(result.claims);
  if (first !== undefined)
    return others.length === 0
      ? `Does “${shortText(first.text, 60)}” hold?`
      : `Do the ${1 + others.length} claims hold?`;
  const story = storyOf(result);
  if (story === null) return 'What is it?';
  if (story.kind === 'step') return 'Does the voltage hold when the load changes?';
  const isAway = story.kind === 'event' && (story.event.kind === 'transfer' || story.event.kind === 'outage');
  return isAway ? 'How long is the voltage away?' : 'Does the voltage hold?';
}

/** True where a capture says itself that its data are invented, in its own text: never for what anything is called. */
export function isInvented({ notices }: { readonly notices: readonly Notice[] }): boolean {
  return notices.some(({ code }) => code === 'data.invented');
}

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
