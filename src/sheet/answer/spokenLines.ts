import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { cleanTexts } from '../cleanTexts.ts';
import { capitalised } from './capitalised.ts';
import { claimsVerdict } from './claimsVerdict.ts';
import { kindPhrase } from './kindPhrase.ts';
import { underLoad } from './loadPhrase.ts';

/**
 * Two sentences to say on camera: what it is with its figure and how the claims stand, then what the answer
 * is not. "At 300 watts this is a sine: 2.1 % distortion, give or take 0.4. One capture, not a certificate."
 */
export function spokenLines(result: MeasureResult): readonly [string, string] {
  const clean = cleanTexts(result);
  const wave = `${underLoad(clean.loadSeen, kindPhrase(clean, 'a sine'), true)}.`;
  return [capitalised(claimsWords(clean) + wave), 'One capture, not a certificate.'];
}

function claimsWords({ claims }: MeasureResult): string {
  const verdict = claimsVerdict(claims);
  if (verdict === null) return '';
  const all = claims.length === 1 ? 'the claim' : `the ${claims.length} claims`;
  const isOne = verdict.claims.length === 1;
  const some = verdict.claims.length === claims.length ? all : `${verdict.claims.length} of ${all}`;
  const words = {
    pass: `${all} ${claims.length === 1 ? 'holds' : 'hold'}`,
    'conditional pass': `${all} probably ${claims.length === 1 ? 'holds' : 'hold'}`,
    'not judged': `${some} can’t be judged`,
    'conditional fail': `${some} probably ${isOne ? 'fails' : 'fail'}`,
    fail: `${some} ${isOne ? 'fails' : 'fail'}`,
  };
  return `${words[verdict.outcome]}: `;
}
