import { cos } from '../../base/elementary/cos.ts';

/** Points and weights on (−1, 1). */
export interface QuadratureRule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/**
 * The Gauss–Legendre rule: exact for polynomials up to degree 2n − 1. The nodes are the zeros of the
 * Legendre polynomial Pn, by Newton's method from the usual cosine start.
 *
 * @param count - n, 1 and up.
 * @see Abramowitz and Stegun, Handbook of Mathematical Functions, 25.4.29 and 22.16.6
 */
export function gaussLegendre(count: number): QuadratureRule {
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let x = cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    // Quadratic convergence from a start good to 1/n²: ten steps are more than it needs.
    for (let step = 0; step < 10; step++) {
      let previous = 1;
      let value = x;
      for (let degree = 2; degree <= count; degree++) {
        const next = ((2 * degree - 1) * x * value - (degree - 1) * previous) / degree;
        previous = value;
        value = next;
      }
      slope = (count * (x * value - previous)) / (x * x - 1);
      x -= value / slope;
    }
    nodes[i] = x;
    weights[i] = 2 / ((1 - x * x) * slope * slope);
  }
  return { nodes, weights };
}
