import { expect, test } from 'vitest';
import { phasors } from '../../src/signal/phasors.ts';

test('sampleTurns(length, omega) are cos ωu and sin ωu, u from the centre', () => {
  for (const [length, omega] of [
    [1, 0.3],
    [1000, 0.0137],
    [1001, 2.9],
  ] as const) {
    const { re, im } = phasors(length, omega);
    expect([re.length, im.length]).toEqual([length, length]);
    for (let n = 0; n < length; n++) {
      const phase = omega * (n - (length - 1) / 2);
      // Eight turns of a rounding each, and the roundings of the phases themselves.
      const rounding = 3e-15 + Math.abs(phase) * 2 ** -52;
      expect(Math.abs(re[n]! - Math.cos(phase))).toBeLessThan(rounding);
      expect(Math.abs(im[n]! - Math.sin(phase))).toBeLessThan(rounding);
    }
  }
});
