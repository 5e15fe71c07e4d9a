import { normalTail } from '../../verdict/rule/normalTail.ts';
import type { CompareDocument } from './compareDocument.ts';

/** Two tails beyond two standard deviations: what a single comparison is wrong in. */
const SINGLE_RISK = 2 * normalTail(2);

/**
 * True where nothing tells two captures apart: neither the kind of wave nor any figure.
 *
 * One figure in twenty-two that did not change differs by more than its uncertainty, so that of a dozen some one
 * often does. All of them together are wrong as seldom as one alone where each has a share of its risk (Bonferroni),
 * which widens the uncertainties: 1.4 times for ten figures.
 */
export function isSame({ kind, differences }: CompareDocument): boolean {
  const judged = differences.filter(({ significant }) => significant !== null);
  const factor = deviationsFor(SINGLE_RISK / Math.max(1, judged.length)) / 2;
  const isApart = judged.some(
    ({ difference }) =>
      difference.value !== null && Math.abs(difference.value) > factor * difference.uncertainty,
  );
  return kind.significant !== true && !isApart;
}

/** Standard deviations beyond which both tails together hold a risk, by halves. */
function deviationsFor(risk: number): number {
  let [low, high] = [0, 40];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (2 * normalTail(middle) > risk) low = middle;
    else high = middle;
  }
  return high;
}
