import type { MeasuredFigure } from '../../base/figure.ts';

/** Standard uncertainty of a quantity known only to lie within ± halfWidth (JCGM 100:2008, 4.3.7). */
export const rectangular = (halfWidth: number): number => halfWidth / Math.sqrt(3);

/**
 * A figure from its value and the standard uncertainties of its independent components.
 *
 * U = k · √Σ u², k = 2
 *
 * @param value - finite.
 * @param standardUncertainties - each ≥ 0, in the unit of the value.
 * @see JCGM 100:2008, 5.1.2 and 6.2.1; k = 2 covers 95.45 % of a normal distribution. Wide by up to a tenth
 * where one rectangular component rules.
 */
export function expand(value: number, ...standardUncertainties: readonly number[]): MeasuredFigure {
  return { value, uncertainty: 2 * Math.hypot(...standardUncertainties) };
}
