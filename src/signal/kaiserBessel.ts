import { exp } from '../base/elementary/exp.ts';

/** Width of the kernel in bins. */
export const KERNEL_BINS = 12;

/** π·√((W/2)²·(3/2)² − 0.8): the shape that fits a record padded to twice its length. */
const SHAPE: number = Math.PI * Math.sqrt((KERNEL_BINS / 2) ** 2 * 2.25 - 0.8);

/**
 * The Kaiser-Bessel kernel that reads a spectrum between its bins: I₀(β·√(1 − (2x/W)²)) / I₀(β).
 *
 * @param x - distance in bins.
 * @returns 1 at 0, 0 from half a width on.
 * @see P. J. Beatty, D. G. Nishimura, J. M. Pauly, IEEE Trans. Med. Imaging 24(6), 2005, 799–808, for β
 * (from memory).
 */
export function kaiserBessel(x: number): number {
  const inside = 1 - ((2 * x) / KERNEL_BINS) ** 2;
  return inside <= 0 ? 0 : besselI0(SHAPE * Math.sqrt(inside)) / besselI0AtShape;
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

/** Modified Bessel function of the first kind, order 0: Σ ((x/2)^k / k!)². */
function besselI0(x: number): number {
  const quarter = (x * x) / 4;
  let term = 1;
  let sum = 1;
  for (let k = 1; term > 1e-17 * sum; k++) {
    term *= quarter * INVERSE_SQUARES[k]!;
    sum += term;
  }
  return sum;
}

const besselI0AtShape = besselI0(SHAPE);
