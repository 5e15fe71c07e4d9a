import { describe, expect, test } from 'vitest';
import { assayCapture } from '../../src/assay/assayCapture.ts';
import type { Figure } from '../../src/base/figure.ts';
import { parseClaim } from '../../src/judge/claims/parseClaim.ts';
import { readCapture } from '../../src/read/readCapture.ts';
import { synthesise } from '../../src/synth/synthesise.ts';
import { benchEvening } from './benchEvening.ts';

describe.each(benchEvening)('$file', ({ file, label, load, claims, wave }) => {
  const { bytes, truth } = synthesise(wave);
  const { probeRatio = 1 } = wave;
  const [assay] = assayCapture(
    readCapture(bytes),
    { file, sha256: '0'.repeat(64) },
    { label, load, claims: claims.map(parseClaim), scales: [{ channel: null, factor: probeRatio }] },
  );
  const { voltage, waveform, claims: judged } = assay!.result;

  test('is told for what it is', () => {
    expect(waveform.kind).toBe(truth.kind);
    expect(judged[0]!.outcome.includes('pass')).toBe(truth.kind === 'pure sine');
  });

  test.each([
    ['frequency', voltage!.frequencyHz, truth.frequencyHz],
    ['RMS', voltage!.rmsV, truth.rmsV],
    ['mean', voltage!.meanV, truth.meanV],
    ['crest factor', voltage!.crestFactor, truth.crestFactor],
    ['form factor', voltage!.formFactor, truth.formFactor],
    ['fundamental', voltage!.fundamentalV, truth.fundamentalV],
    ['THD', voltage!.thdPercent, truth.thdPercent],
  ] as const)('%s lies within its own uncertainty', (_, figure: Figure, expected) => {
    expect(figure.value).not.toBe(null);
    if (figure.value !== null) {
      expect(Math.abs(figure.value - expected!)).toBeLessThanOrEqual(figure.uncertainty);
    }
  });
});
