import type { Harmonic } from './waveFigures.ts';

/**
 * What a first-order low-pass takes from the THD.
 *
 * |H(f)| = 1 / √(1 + (f/fc)²), relative to the fundamental's own loss
 *
 * @param orders - as measured, from the fundamental up.
 * @param fundamentalHz - > 0.
 * @param bandwidthHz - −3 dB of scope and probe; null: no loss.
 * @returns percent points, ≥ 0.
 */
export function bandwidthLoss(
  orders: readonly Harmonic[],
  fundamentalHz: number,
  bandwidthHz: number | null,
): { readonly thdPercent: number } {
  if (bandwidthHz === null) return { thdPercent: 0 };
  const gainSquare = (order: number): number => 1 / (1 + ((order * fundamentalHz) / bandwidthHz) ** 2);
  let [seen, whole] = [0, 0];
  for (const { order, percent } of orders) {
    if (order === 1) continue;
    seen += percent ** 2;
    whole += (percent ** 2 * gainSquare(1)) / gainSquare(order);
  }
  return { thdPercent: Math.sqrt(whole) - Math.sqrt(seen) };
}
