import { hypot } from '../../base/elementary/hypot.ts';
import type { Harmonic } from '../../figures/waveFigures.ts';

/**
 * THD of the current that a capacitor would draw from a voltage: each order passes in proportion to its
 * number.
 *
 * THD = √Σ (n · Vn/V1)², n ≥ 2
 *
 * @param harmonics - of the voltage.
 * @returns percent.
 */
export function capacitorDistortion(harmonics: readonly Harmonic[]): number {
  return hypot(...harmonics.filter(({ order }) => order > 1).map(({ order, percent }) => order * percent));
}
