import { hypot, wholePower } from '../../base/elementary.ts';
import type { MeasuredFigure } from '../../base/figure.ts';
import { type Component, contribution } from './component.ts';
import { coverageHalfWidth } from './coverageHalfWidth.ts';

/** How a figure's uncertainty is made up. */
export interface Budget {
  /** As given, the largest contribution first; those of nothing left out. */
  readonly components: readonly Component[];
  /** √Σ (c·u)², in the figure's unit. */
  readonly combinedStandardUncertainty: number;
  /** Expanded over combined; 2 for a normal distribution, down to 1.65 where one rectangle rules. */
  readonly coverageFactor: number;
  /** Welch-Satterthwaite; Infinity where no component has few. */
  readonly effectiveDegreesOfFreedom: number;
}

export interface BudgetedFigure extends MeasuredFigure {
  readonly budget: Budget;
}

/**
 * A figure with the half-width that covers 95.45 % of its components' combined distribution.
 *
 * @param value - finite, in the figure's unit.
 * @param components - independent but for those of one source, which is one influence felt in several ways.
 * @see JCGM 100:2008, 5.1 and G.4; JCGM 101:2008 for the combined distribution in place of k = 2.
 */
export function budgeted(value: number, components: readonly Component[]): BudgetedFigure {
  const felt = merged(components)
    .filter((component) => contribution(component) > 0)
    .sort((a, b) => contribution(b) - contribution(a));
  const combinedStandardUncertainty = hypot(...felt.map(contribution));
  const uncertainty = coverageHalfWidth(felt);
  return {
    value,
    uncertainty,
    budget: {
      components: felt,
      combinedStandardUncertainty,
      coverageFactor: combinedStandardUncertainty > 0 ? uncertainty / combinedStandardUncertainty : 2,
      effectiveDegreesOfFreedom: effectiveDegreesOfFreedom(felt),
    },
  };
}

/** One line a source: an influence felt through numerator and denominator counts with the sum of its signs. */
function merged(components: readonly Component[]): readonly Component[] {
  const bySource = new Map<string, Component>();
  for (const component of components) {
    const same = bySource.get(component.source);
    const sensitivity = component.sensitivity + (same?.sensitivity ?? 0);
    bySource.set(component.source, { ...component, sensitivity });
  }
  return [...bySource.values()];
}

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
