import { hypot } from '../../base/elementary/hypot.ts';
import type { Figure } from '../../base/figure.ts';
import type { WaveFigures } from '../../figures/waveFigures.ts';

/**
 * THD counted to the order that a standard counts to.
 *
 * THD = 100 · sqrt( Σ V_n², n = 2 … highestOrder ) / V_1
 *
 * @param highestOrder - whole, 2 and up; orders that were not measured are left out.
 * @returns percent of the fundamental. Where it takes in all orders measured, the figure as it stands.
 * @remarks The uncertainty is that of the whole THD, unchanged. Equal and independent errors σ of the V_n
 * give a root sum of squares the error σ however many there are, so that part carries over exactly; a part
 * proportional to the THD can only be smaller for fewer orders, so the whole is on the safe side.
 */
export function thdToOrder(figures: WaveFigures, highestOrder: number): Figure {
  const { thdPercent, thdOrders, harmonics } = figures;
  if (thdPercent.value === null || highestOrder >= thdOrders) return thdPercent;
  const counted = harmonics.filter(({ order }) => order >= 2 && order <= highestOrder);
  return { value: hypot(...counted.map(({ percent }) => percent)), uncertainty: thdPercent.uncertainty };
}
