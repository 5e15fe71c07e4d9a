import type { Figure } from '../../base/figure.ts';
import { budgeted } from '../uncertainty/budget.ts';
import { scatter } from '../uncertainty/component.ts';

/**
 * 100 · numerator / denominator of two figures measured independently of each other.
 *
 * @returns percent, with both uncertainties; missing where one of the two is, or the denominator is nothing
 * beside its own uncertainty.
 */
export function quotientPercent(numerator: Figure, denominator: Figure): Figure {
  if (numerator.value === null) return numerator;
  if (denominator.value === null) return denominator;
  if (Math.abs(denominator.value) <= denominator.uncertainty) {
    return { value: null, reason: 'what it would be divided by is within its own uncertainty of zero' };
  }
  const percent = (100 * numerator.value) / denominator.value;
  return budgeted(percent, [
    // Figures carry 95.45 %: two standard uncertainties.
    scatter('numerator', numerator.uncertainty / 2, 'U', 100 / denominator.value),
    scatter('denominator', denominator.uncertainty / 2, 'U', percent / denominator.value),
  ]);
}
