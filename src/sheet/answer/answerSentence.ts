import type { ClaimResult, MeasureResult } from '../../verdict/measureDocument.ts';
import { cleanTexts } from '../cleanTexts.ts';
import { capitalised } from './capitalised.ts';
import { claimsVerdict } from './claimsVerdict.ts';
import { claimValueText } from './claimValueText.ts';
import { kindPhrase } from './kindPhrase.ts';
import { underLoad } from './loadPhrase.ts';
import { shortText } from './shortText.ts';

const short = {
  pass: 'Yes',
  'conditional pass': 'Probably yes',
  'not judged': 'Can’t be told',
  'conditional fail': 'Probably not',
  fail: 'No',
} as const satisfies Record<ClaimResult['outcome'], string>;

/**
 * The answer in one sentence, the same on the sheet and in the terminal:
 * "Yes, at 300 W resistive this is a pure sine: 2.1 % distortion, give or take 0.4."
 */
export function answerSentence(result: MeasureResult): string {
  const clean = cleanTexts(result);
  const verdict = claimsVerdict(clean.claims);
  const wave = `${underLoad(clean.loadSeen, kindPhrase(clean))}.`;
  if (verdict === null) return capitalised(wave);
  const reason = because(verdict.claims, clean.claims.length);
  return `${short[verdict.outcome]}, ${reason === '' ? '' : `${reason}; `}${wave}`;
}

/** Which claims decided, unless it is a single one about the kind of wave, which the rest of the sentence answers. */
function because(deciding: readonly ClaimResult[], claimCount: number): string {
  const [first] = deciding;
  if (first === undefined || first.outcome === 'pass') return '';
  if (claimCount === 1) return typeof first.value === 'string' ? '' : claimValueText(first).named;
  const named = `“${shortText(first.text, 40)}”`;
  const others = deciding.length - 1;
  const who = others === 0 ? named : `${named} and ${others} more`;
  const does = {
    fail: others === 0 ? 'fails' : 'fail',
    'conditional fail': others === 0 ? 'probably fails' : 'probably fail',
    'not judged': 'can’t be judged',
    'conditional pass': others === 0 ? 'only probably holds' : 'only probably hold',
  }[first.outcome];
  return `${who} ${does}`;
}
