import { exp } from '../../base/elementary/exp.ts';
import type { CodeCounts } from './codeCounts.ts';

/** Times the model must ask for a code before its absence is no chance: e⁻¹⁰ = 5e-5. */
const ASKED_OFTEN = 10;

/** Noise of more codes than this hides a missing one, and harm that it might do. */
const NOISIEST_CODES = 8;

/**
 * Codes between the extremes that never occur though the wave passes them: an ideal converter gives none.
 *
 * @param noiseCodes - standard deviation of the noise, in codes: it carries samples off the code that the model asks
 * for, so that one asked for by a wave locked to the sample clock may stay empty by chance.
 * @returns their number; 0 where they stand at even distances of more than three codes: then values of a coarser
 * step were printed on a grid a little finer, which skips one every so often.
 * @remarks A converter that loses every 64th code at its carries hides behind that.
 * @see IEEE Std 1241-2010, missing codes, by the histogram method (from memory).
 */
export function missingCodes({ observed, expected }: CodeCounts, noiseCodes: number): number {
  if (noiseCodes > NOISIEST_CODES) return 0;
  const weights = spread(noiseCodes);
  const missing: number[] = [];
  for (let i = 1; i < observed.length - 1; i++) {
    if (observed[i] === 0 && askedFor(expected, i, weights) >= ASKED_OFTEN) missing.push(i);
  }
  return isEven(missing) ? 0 : missing.length;
}

/** Shares of a code's samples that normal noise leaves on it, on its neighbours and so on; they sum to 1 over both sides. */
function spread(noiseCodes: number): readonly number[] {
  const reach = Math.ceil(4 * noiseCodes);
  const sizes = Array.from({ length: reach + 1 }, (_, k) =>
    k === 0 ? 1 : exp(-0.5 * (k / noiseCodes) ** 2),
  );
  const total = sizes.reduce((sum, size, k) => sum + (k === 0 ? size : 2 * size), 0);
  return sizes.map((size) => size / total);
}

/** Samples that the model puts on code i once noise has spread them. */
function askedFor(expected: Uint32Array, i: number, weights: readonly number[]): number {
  let asked = 0;
  for (let k = 1 - weights.length; k < weights.length; k++)
    asked += weights[Math.abs(k)]! * (expected[i + k] ?? 0);
  return asked;
}

/** Three or more, all equally far apart to one code. */
function isEven(codes: readonly number[]): boolean {
  if (codes.length < 3) return false;
  const distances = codes.slice(1).map((code, i) => code - codes[i]!);
  const [shortest, longest] = [Math.min(...distances), Math.max(...distances)];
  return shortest > 3 && longest - shortest <= 1;
}
