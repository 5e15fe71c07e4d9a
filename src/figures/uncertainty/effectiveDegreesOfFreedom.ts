import { hypot } from '../../base/elementary/hypot.ts';
import { wholePower } from '../../base/elementary/wholePower.ts';
import { type Component, contribution } from './component.ts';

/**
 * Welch-Satterthwaite: ν = u⁴ / Σ (uᵢ⁴ / νᵢ).
 *
 * @returns > 0; Infinity where no component has finite degrees of freedom.
 * @see JCGM 100:2008, G.4.1, equation (G.2b).
 */
export function effectiveDegreesOfFreedom(components: readonly Component[]): number {
  const combined = hypot(...components.map(contribution));
  let sum = 0;
  for (const component of components) {
    sum += wholePower(contribution(component), 4) / (component.degreesOfFreedom ?? Number.POSITIVE_INFINITY);
  }
  return sum > 0 ? wholePower(combined, 4) / sum : Number.POSITIVE_INFINITY;
}
