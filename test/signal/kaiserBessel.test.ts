import { expect, test } from 'vitest';
import { KERNEL_BINS, KERNEL_WIDTH, kaiserBesselWeights } from '../../src/signal/lineSpectrum.ts';
import reference from '../reference/signalValues.json' with { type: 'json' };

test('kaiserBesselWeights(back, …) are I₀(β·√(1 − (2x/W)²)) / I₀(β) as scipy.special has I₀', () => {
  for (const { back, weights: expected } of reference.kaiserBessel) {
    const weights = new Float64Array(KERNEL_WIDTH);
    kaiserBesselWeights(back, weights, 0);
    expected.forEach((weight, i) => {
      // Beyond half a width the kernel is cut; what is left of it there is 1e-11.
      const isInside = Math.abs(i - back) <= KERNEL_BINS / 2;
      expect(Math.abs(weights[i]! - weight)).toBeLessThan(isInside ? 1e-12 : 1.2e-11);
    });
  }
});
