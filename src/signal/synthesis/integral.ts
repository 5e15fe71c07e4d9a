import type { QuadratureRule } from './gaussLegendre.ts';

/**
 * ∫ f over [from, to], Gauss–Legendre on equal panels.
 *
 * @param rule - how each panel is sampled.
 * @param panels - 1 and up; a rule of 20 points wants about two panels a cycle of the fastest part of f.
 */
export function integral(
  f: (x: number) => number,
  from: number,
  to: number,
  panels: number,
  rule: QuadratureRule,
): number {
  const half = (to - from) / (2 * panels);
  let sum = 0;
  for (let panel = 0; panel < panels; panel++) {
    const middle = from + (2 * panel + 1) * half;
    rule.nodes.forEach((node, i) => {
      sum += (rule.weights[i] as number) * f(middle + half * node);
    });
  }
  return sum * half;
}
