import { describe, expect, it } from 'vitest';
import { judgeClaim } from '../../../src/judge/claims/judgeClaim.ts';
import { parseClaim } from '../../../src/judge/claims/parseClaim.ts';
import type { DecisionRule } from '../../../src/judge/decide.ts';
import type { Waveform } from '../../../src/judge/waveform/waveform.ts';
import { exactly, figuresWith, waveformOf } from '../../assay/figuresWith.ts';

function judge(
  text: string,
  figures = figuresWith(),
  waveform: Waveform = waveformOf('pure sine'),
  rule: DecisionRule = 'guarded',
  sineThdPercent?: number,
) {
  const evidence = { figures, waveform, rule, ...(sineThdPercent === undefined ? {} : { sineThdPercent }) };
  return judgeClaim(parseClaim(text), evidence);
}

describe('judgeClaim', () => {
  it('judges each quantity by its own figure', () => {
    const figures = figuresWith({
      rms: exactly(121, 1),
      frequencyHz: exactly(60.8, 0.1),
      thdPercent: exactly(2.8, 0.4),
      crestFactor: exactly(1.46, 0.02),
    });
    const outcomes = ['120 V ±5 %', '60 Hz ±0.5 Hz', 'THD < 3 %', 'crest 1.38..1.45'].map((text) => {
      const { quantity, value, outcome } = judge(text, figures);
      return [quantity, value, outcome];
    });
    expect(outcomes).toEqual([
      ['rmsV', 121, 'pass'],
      ['frequencyHz', 60.8, 'fail'],
      ['thdPercent', 2.8, 'conditional pass'],
      ['crestFactor', 1.46, 'conditional fail'],
    ]);
  });

  it('keeps text and limit, and the probability of the worked THD check', () => {
    const found = judge('THD <= 5%', figuresWith({ thdPercent: exactly(4.7, 0.4) }));
    expect(found).toMatchObject({ text: 'THD <= 5%', limit: { max: 5 }, outcome: 'conditional pass' });
    // Φ(0.3 / 0.2) = 0.9331928, scipy 1.17.1; digits printed.
    expect(Math.abs((found.probability ?? 0) - 0.9331928)).toBeLessThan(5e-8);
    expect(found).not.toHaveProperty('reason');
  });

  it('cannot judge a figure that was not measured, and says why', () => {
    const found = judge('60 Hz ±1 %', figuresWith({ frequencyHz: { value: null, reason: 'no period' } }));
    expect(found).toMatchObject({
      value: null,
      outcome: 'not judged',
      probability: null,
      reason: 'no period',
    });
  });

  it('cannot judge a value without a tolerance, and shows how to write one', () => {
    const found = judge('120 V');
    expect(found).toMatchObject({ value: 120, limit: null, outcome: 'not judged' });
    expect(found.reason).toEqual({ code: 'claim.valueAlone', example: '120 V ±5 %' });
  });

  it.each([
    ['pure sine', 'pure sine', 'pass'],
    ['pure sine', 'distorted sine', 'fail'],
    ['pure sine', 'modified sine', 'fail'],
    ['modified sine', 'modified sine', 'pass'],
    ['modified sine', 'square', 'fail'],
    ['square', 'square', 'pass'],
    ['stepped', 'pure sine', 'fail'],
  ] as const)('of a claim of %s on a %s says %s', (text, kind, outcome) => {
    const found = judge(text, figuresWith(), waveformOf(kind));
    expect(found).toMatchObject({ quantity: 'waveform', value: kind, limit: null, outcome });
  });

  it('makes a condition of a kind decided at the edge, unless acceptance is simple', () => {
    const edge = { atTheEdge: true };
    expect(judge('pure sine', figuresWith(), waveformOf('pure sine', edge)).outcome).toBe('conditional pass');
    expect(judge('pure sine', figuresWith(), waveformOf('distorted sine', edge)).outcome).toBe(
      'conditional fail',
    );
    expect(judge('pure sine', figuresWith(), waveformOf('pure sine', edge), 'simple').outcome).toBe('pass');
  });

  it('does not waver about plateaus because a smooth wave is at the edge of purity', () => {
    const smooth = waveformOf('distorted sine', { atTheEdge: true });
    expect(judge('modified sine', figuresWith(), smooth).outcome).toBe('fail');
  });

  it('does not judge a wave without a kind', () => {
    const found = judge('pure sine', figuresWith(), waveformOf('not classified', { reasons: ['it is DC'] }));
    expect(found).toMatchObject({ outcome: 'not judged', probability: null, reason: 'it is DC' });
  });

  it('gives a sine the probability of its THD against the threshold', () => {
    const figures = figuresWith({ thdPercent: exactly(5.2, 0.4) });
    const distorted = waveformOf('distorted sine', { atTheEdge: true });
    // Φ(−0.2 / 0.2) = 0.1586553 and, with the threshold at 6 %, the THD no longer explains the kind.
    const found = judge('pure sine', figures, distorted).probability;
    expect(Math.abs((found ?? 0) - 0.1586553)).toBeLessThan(5e-8);
    expect(judge('pure sine', figures, distorted, 'guarded', 6).probability).toBeNull();
    expect(judge('pure sine', figures, waveformOf('square')).probability).toBeNull();
    // A THD far inside with a crest factor at the edge, or outside: the THD decided nothing.
    const low = figuresWith({ thdPercent: exactly(1, 0.4) });
    expect(judge('pure sine', low, waveformOf('pure sine', { atTheEdge: true })).probability).toBeNull();
    expect(judge('pure sine', low, distorted).probability).toBeNull();
    expect(judge('pure sine', low, waveformOf('pure sine')).probability).toBe(1); // 20 standard deviations
    expect(judge('modified sine', figures, waveformOf('square')).probability).toBeNull();
  });
});
