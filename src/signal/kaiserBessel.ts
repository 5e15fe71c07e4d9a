import { exp } from '../base/elementary/exp.ts';

/** Width of the kernel in bins. */
export const KERNEL_BINS = 12;

/** π·√((W/2)²·(3/2)² − 0.8): the shape that fits a record padded to twice its length. */
const SHAPE: number = Math.PI * Math.sqrt((KERNEL_BINS / 2) ** 2 * 2.25 - 0.8);

/** Bins that a kernel weighs, at most. */
export const KERNEL_WIDTH: number = KERNEL_BINS + 1;

/** Steps of a bin in which the kernel is tabulated: cubics through four of them are then good to 1e-12. */
const STEPS = 512;

/**
 * The Kaiser-Bessel kernel that reads a spectrum between its bins: I₀(β·√(1 − (2x/W)²)) / I₀(β), x in bins; 1 at 0,
 * and nothing from half a width on, where it has come down to 1e-11.
 *
 * @param back - bins from the line back to the first that is weighed, W/2 − 1 ≤ back ≤ W/2.
 * @param weights - filled from `at` on: KERNEL_WIDTH of them, for that bin and those that follow.
 * @see P. J. Beatty, D. G. Nishimura, J. M. Pauly, IEEE Trans. Med. Imaging 24(6), 2005, 799–808, for β
 * (from memory).
 */
export function kaiserBesselWeights(back: number, weights: Float64Array, at: number): void {
  const steps = (KERNEL_BINS / 2 - back) * STEPS;
  const step = Math.floor(steps);
  // Between the second and the third of four, by Lagrange; all bins lie as far behind a step.
  const t = steps - step;
  const a = (-t * (t - 1) * (t - 2)) / 6;
  const b = ((t + 1) * (t - 1) * (t - 2)) / 2;
  const c = (-(t + 1) * t * (t - 2)) / 2;
  const d = ((t + 1) * t * (t - 1)) / 6;
  for (let i = 0, from = step; i < KERNEL_WIDTH; i++, from += STEPS) {
    weights[at + i] = a * table[from]! + b * table[from + 1]! + c * table[from + 2]! + d * table[from + 3]!;
  }
}

/**
 * Its Fourier transform, W·sinh(s)/s / I₀(β) with s = √(β² − (πWξ)²).
 *
 * @param xi - in cycles a bin, |ξ| ≤ 1/4: place in the record over the transform's size.
 */
export function kaiserBesselTransform(xi: number): number {
  const s = Math.sqrt(SHAPE * SHAPE - (Math.PI * KERNEL_BINS * xi) ** 2);
  const grown = exp(s);
  return (KERNEL_BINS * (grown - 1 / grown)) / (2 * s) / besselI0AtShape;
}

/** 1/k²: more than the series has terms where x is at most SHAPE. A division takes several times as long. */
const INVERSE_SQUARES = Float64Array.from({ length: 100 }, (_, k) => 1 / (k * k));

/**
 * Modified Bessel function of the first kind, order 0, by the square of its argument: Σ ((x/2)^k / k!)². Below 0 it goes on
 * as J₀.
 */
function besselI0(square: number): number {
  const quarter = square / 4;
  let term = 1;
  let sum = 1;
  for (let k = 1; Math.abs(term) > 1e-17 * sum; k++) {
    term *= quarter * INVERSE_SQUARES[k]!;
    sum += term;
  }
  return sum;
}

const besselI0AtShape = besselI0(SHAPE * SHAPE);

/** The kernel at every step from one before −W/2 on, to one behind W/2; zeros beyond. */
const table: Float64Array = new Float64Array(KERNEL_WIDTH * STEPS + 4);
for (let i = 0; i <= (KERNEL_BINS / 2) * STEPS + 1; i++) {
  const x = (i - 1) / STEPS - KERNEL_BINS / 2;
  const value = besselI0(SHAPE * SHAPE * (1 - ((2 * x) / KERNEL_BINS) ** 2)) / besselI0AtShape;
  // The same on either side.
  table[i] = value;
  table[KERNEL_BINS * STEPS + 2 - i] = value;
}
