import { exp } from '../../base/elementary/exp.ts';

/**
 * Half-width of what rounding to a digitiser's codes leaves in a level after noise has broken it up.
 *
 * Without noise a level is off by up to half a step wherever it is sampled; Gaussian noise of deviation σ
 * shrinks the mean error by e^(−2π²σ²/q²): half a step of noise leaves 0.7 %.
 *
 * @param stepSize - q > 0, or null where there is none.
 * @param noise - as seen after rounding, ≥ 0, same unit: q²/12 of its variance is the rounding's own.
 * @see B. Widrow, I. Kollár, "Quantization Noise", Cambridge 2008: the characteristic function of the input
 * at 1/q (from memory).
 */
export function roundingLeft(stepSize: number | null, noise: number): number {
  if (stepSize === null) return 0;
  const dither = Math.max(0, (noise / stepSize) ** 2 - 1 / 12);
  return (stepSize / 2) * exp(-2 * Math.PI ** 2 * dither);
}
