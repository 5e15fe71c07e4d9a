import type { CycleWeights } from '../../signal/wholeCycleWeights.ts';
import type { FittedChannel } from './fittedChannel.ts';

/** Samples of the residuals that are worked out at once. */
const RUN = 2 ** 12;

/**
 * Mean of a·b over whole cycles, taken in time: the exact mean of the product of the two series plus the
 * weighted mean of what the samples add to it. With a = b it is the square of the RMS.
 *
 * ⟨a·b⟩ = a₀·b₀ + ½ Σ (aₖ·bₖ, cosines and sines) + Σ w·(a·b − series·series)
 *
 * @param a - shape N, fitted at the frequency of `b` to as many orders.
 * @param b - shape N. A sample missing in either adds nothing: the series stand in for it.
 * @param weights - of `wholeCycleWeights`.
 * @returns in the product of the two units.
 */
export function meanProduct(a: FittedChannel, b: FittedChannel, weights: CycleWeights): number {
  let product = a.fit.mean * b.fit.mean;
  for (let k = 0; k < a.fit.cosine.length; k++) {
    product += (a.fit.cosine[k]! * b.fit.cosine[k]! + a.fit.sine[k]! * b.fit.sine[k]!) / 2;
  }
  const [roomA, roomB] = [new Float64Array(RUN), new Float64Array(RUN)];
  for (let from = 0; from < weights.length; from += RUN) {
    const to = Math.min(weights.length, from + RUN);
    const ofA = a.fit.residual.stretch(from, to, roomA);
    const ofB = a === b ? ofA : b.fit.residual.stretch(from, to, roomB);
    for (let i = 0; i < ofA.length; i++) {
      const [x, y] = [a.samples[from + i]!, b.samples[from + i]!];
      const added = x * y - (x - ofA[i]!) * (y - ofB[i]!);
      if (!Number.isNaN(added)) product += weights.at(from + i) * added;
    }
  }
  return product;
}
