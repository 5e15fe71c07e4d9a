import type { ClaimResult, Waveform } from '../measureDocument.ts';
import { decide } from '../rule/decide.ts';
import type { WaveformClaim } from './claim.ts';
import type { ClaimEvidence } from './claimEvidence.ts';

const DEFAULT_SINE_THD_PERCENT = 5;

/**
 * Whether the wave is of the kind that was claimed.
 *
 * @returns conditional where the kind was decided at the edge. The probability is that of the THD against
 * the threshold where the THD decided, else null: plateaus are counted, not weighed.
 */
export function judgeWaveformClaim(claim: WaveformClaim, evidence: ClaimEvidence): ClaimResult {
  const { waveform, rule } = evidence;
  const known = { text: claim.text, quantity: claim.quantity, value: waveform.kind, limit: null };
  if (waveform.kind === 'not classified') {
    const reason = waveform.reasons[0] ?? 'the kind of wave could not be told';
    return { ...known, outcome: 'not judged', probability: null, reason };
  }
  const plain = waveform.kind === claim.kind ? 'pass' : 'fail';
  const conditional = rule === 'guarded' && isAtEdgeOf(claim, waveform);
  return {
    ...known,
    outcome: conditional ? `conditional ${plain}` : plain,
    probability: claim.kind === 'pure sine' ? sineProbability(evidence) : null,
  };
}

/** A smooth wave at the edge wavers between pure and distorted: no doubt of that kind reaches a claim of plateaus. */
function isAtEdgeOf(claim: WaveformClaim, waveform: Waveform): boolean {
  return waveform.atTheEdge && (claim.kind === 'pure sine' || !isSmooth(waveform));
}

/** Null unless the THD explains what was found, kind and edge both: the crest factor may have decided. */
function sineProbability({ figures, waveform, sineThdPercent }: ClaimEvidence): number | null {
  if (!isSmooth(waveform)) return null;
  const max = sineThdPercent ?? DEFAULT_SINE_THD_PERCENT;
  const { outcome, probability } = decide(figures.thdPercent, { max }, 'guarded');
  const plain = waveform.kind === 'pure sine' ? 'pass' : 'fail';
  return outcome === (waveform.atTheEdge ? `conditional ${plain}` : plain) ? probability : null;
}

function isSmooth({ kind }: Waveform): boolean {
  return kind === 'pure sine' || kind === 'distorted sine';
}
