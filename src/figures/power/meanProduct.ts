import type { FittedChannel } from './fittedChannel.ts';

/**
 * Mean of a·b over whole cycles, taken in time: the exact mean of the product of the two series plus the
 * weighted mean of what the samples add to it. With a = b it is the square of the RMS.
 *
 * ⟨a·b⟩ = a₀·b₀ + ½ Σ (aₖ·bₖ, cosines and sines) + Σ w·(a·b − series·series)
 *
 * @param a - shape N, fitted at the frequency of `b` to as many orders.
 * @param b - shape N. A sample missing in either adds nothing: the series stand in for it.
 * @param weights - shape N, of `wholeCycleWeights`.
 * @returns in the product of the two units.
 */
export function meanProduct(a: FittedChannel, b: FittedChannel, weights: Float64Array): number {
  let product = a.fit.mean * b.fit.mean;
  for (let k = 0; k < a.fit.cosine.length; k++) {
    product += (a.fit.cosine[k]! * b.fit.cosine[k]! + a.fit.sine[k]! * b.fit.sine[k]!) / 2;
  }
  for (let n = 0; n < weights.length; n++) {
    const [ofA, ofB] = [a.fit.residual[n]!, b.fit.residual[n]!];
    if (Number.isNaN(ofA) || Number.isNaN(ofB)) continue;
    const [x, y] = [a.samples[n]!, b.samples[n]!];
    product += weights[n]! * (x * y - (x - ofA) * (y - ofB));
  }
  return product;
}
