import type { MeasuredFigure } from '../../base/figure.ts';
import type { Limit } from '../measureDocument.ts';
import { normalTail } from './normalTail.ts';

/** The uncertainties of figures are expanded with k = 2 (95.45 % of a normal distribution). */
const COVERAGE_FACTOR = 2;

/**
 * The probability that the true value lies within the limit, given the measured one.
 *
 * pc = Φ((TU − y)/u) − Φ((TL − y)/u), a missing limit at infinity, u = U/2
 *
 * @param figure - y and U, both in the limit's unit.
 * @param limit - a limit itself counts as inside.
 * @returns 0 to 1; exactly 0 or 1 where U = 0.
 * @remarks Presumes a normal distribution and no knowledge from before the measurement.
 * @see JCGM 106:2012, 7.3 and 7.4 (clause numbers from memory).
 */
export function conformanceProbability(figure: MeasuredFigure, limit: Limit): number {
  const { value, uncertainty } = figure;
  const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = limit;
  if (uncertainty === 0) return value >= min && value <= max ? 1 : 0;
  const standardUncertainty = uncertainty / COVERAGE_FACTOR;
  const above = normalTail((max - value) / standardUncertainty);
  const below = normalTail((value - min) / standardUncertainty);
  return Math.max(0, 1 - above - below);
}
