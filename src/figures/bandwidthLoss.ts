import type { Harmonic } from './waveFigures.ts';

/** What a low-pass takes, each ≥ 0. */
export interface BandwidthLoss {
  /** Of the THD, percent points. */
  readonly thdPercent: number;
  /** Of the RMS, a ratio. */
  readonly rmsRatio: number;
  /** Of one order's share of the fundamental, a ratio. */
  orderRatio(order: number): number;
}

/**
 * What a first-order low-pass takes from a wave.
 *
 * |H(f)| = 1 / √(1 + (f/fc)²); shares of the fundamental lose what is beyond the fundamental's own loss
 *
 * @param orders - as measured, from the fundamental up.
 * @param fundamentalHz - > 0.
 * @param bandwidthHz - −3 dB of scope and probe; null: no loss.
 */
export function bandwidthLoss(
  orders: readonly Pick<Harmonic, 'order' | 'percent'>[],
  fundamentalHz: number,
  bandwidthHz: number | null,
): BandwidthLoss {
  if (bandwidthHz === null) return { thdPercent: 0, rmsRatio: 0, orderRatio: () => 0 };
  const square = (order: number): number => 1 + ((order * fundamentalHz) / bandwidthHz) ** 2;
  let [seen, whole] = [0, 0];
  for (const { order, percent } of orders) {
    if (order === 1) continue;
    seen += percent ** 2;
    whole += (percent ** 2 * square(order)) / square(1);
  }
  return {
    thdPercent: Math.sqrt(whole) - Math.sqrt(seen),
    rmsRatio: Math.sqrt((square(1) * (100 ** 2 + whole)) / (100 ** 2 + seen)) - 1,
    orderRatio: (order) => Math.sqrt(square(order) / square(1)) - 1,
  };
}
