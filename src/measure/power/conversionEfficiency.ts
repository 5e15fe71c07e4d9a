import type { Figure } from '../../base/figure.ts';
import { budgeted } from '../doubt/budget.ts';
import { scatter } from '../doubt/component.ts';
import type { MeasureNotice } from '../notices.ts';
import { missing } from '../reasons.ts';

interface ConversionEfficiency {
  /** 100 · AC out / DC in. */
  readonly efficiencyPercent: Figure;
  readonly notices: readonly MeasureNotice[];
}

/**
 * What share of the direct power that goes in comes out of the outlet.
 *
 * @param outW - active power at the outlet, taken over the same time as `inW`.
 * @param inW - mean power at the DC input.
 * @returns the quotient as it is; above 100 % beyond its uncertainty a notice says that it can't be.
 */
export function conversionEfficiency(outW: Figure, inW: Figure): ConversionEfficiency {
  const efficiencyPercent = quotientPercent(outW, inW);
  const { value } = efficiencyPercent;
  if (value === null || value - efficiencyPercent.uncertainty <= 100) {
    return { efficiencyPercent, notices: [] };
  }
  return { efficiencyPercent, notices: [{ code: 'efficiency.impossible', percent: value }] };
}

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
    return missing({ code: 'quotient.byNothing' });
  }
  const percent = (100 * numerator.value) / denominator.value;
  return budgeted(percent, [
    // Figures carry 95.45 %: two standard uncertainties.
    scatter('numerator', numerator.uncertainty / 2, 'U', 100 / denominator.value),
    scatter('denominator', denominator.uncertainty / 2, 'U', percent / denominator.value),
  ]);
}
