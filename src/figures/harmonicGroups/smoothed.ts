import { exp } from '../../base/elementary/exp.ts';

/** Time constant of the smoothing, s. */
const TIME_CONSTANT_S = 1.5;

/**
 * First-order low-pass of window values: y[n] = (x[n] + β·y[n−1]) / α, α = 1 / (1 − exp(−T / 1.5 s)), β = α − 1.
 *
 * @param values - one a window, in order. Not changed.
 * @param windowS - T, > 0.
 * @returns same shape. It starts from the first value as if that had stood for ever.
 * @see IEC 61000-4-7:2002+A1:2008, 5.5.1 (from memory). It prints α and β to three or four digits (8.012 and
 * 7.012 for 200 ms); these come from the time constant.
 * @example smoothed([0, 8.011], 0.2) // [0, 1.000]
 */
export function smoothed(values: readonly number[], windowS: number): number[] {
  const alpha = 1 / (1 - exp(-windowS / TIME_CONSTANT_S));
  let last = values[0] ?? 0;
  return values.map((value) => {
    last = (value + (alpha - 1) * last) / alpha;
    return last;
  });
}
