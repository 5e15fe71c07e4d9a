import { cos } from '../../base/elementary/cos.ts';
import { sin } from '../../base/elementary/sin.ts';

/** Σ uᵖ·cos mωu and Σ uᵖ·sin mωu over the present samples, m = 0 … M. */
export interface TimedSums {
  readonly cos: Float64Array;
  readonly sin: Float64Array;
}

/**
 * The sums that a harmonic fit's matrices are made of, for p = 0, 1 and 2: the Dirichlet kernel and its derivatives
 * over the whole record, less what is missing.
 *
 * D(φ) = sin(Nφ/2) / sin(φ/2) = Σ cos φu; Σ u·sin φu = −D′; Σ u²·cos φu = −D″
 *
 * @param length - N samples; u runs from −(N−1)/2 to (N−1)/2.
 * @param highest - M, M·omega < 2π.
 * @param missing - positions of the missing samples, 0 … N − 1.
 */
export function timedSums(
  length: number,
  omega: number,
  highest: number,
  missing: readonly number[],
): readonly [TimedSums, TimedSums, TimedSums] {
  const [plain, timed, twice] = [empty(highest), empty(highest), empty(highest)];
  plain.cos[0] = length;
  twice.cos[0] = (length * (length * length - 1)) / 12;
  for (let m = 1; m <= highest; m++) {
    const half = (m * omega) / 2;
    const [s, c] = [sin(half), cos(half)];
    const [wholeS, wholeC] = [sin(length * half), cos(length * half)];
    plain.cos[m] = wholeS / s;
    timed.sin[m] = (wholeS * c) / (2 * s * s) - (length * wholeC) / (2 * s);
    twice.cos[m] =
      (length * length * wholeS) / (4 * s) +
      (length * wholeC * c) / (2 * s * s) -
      wholeS * (1 / (4 * s) + (c * c) / (2 * s * s * s));
  }
  for (const n of missing) takeOut(n - (length - 1) / 2, omega, [plain, timed, twice]);
  return [plain, timed, twice];
}

function takeOut(
  u: number,
  omega: number,
  [plain, timed, twice]: readonly [TimedSums, TimedSums, TimedSums],
): void {
  const [stepRe, stepIm] = [cos(omega * u), sin(omega * u)];
  let [re, im] = [1, 0];
  for (let m = 0; m < plain.cos.length; m++) {
    plain.cos[m]! -= re;
    plain.sin[m]! -= im;
    timed.cos[m]! -= u * re;
    timed.sin[m]! -= u * im;
    twice.cos[m]! -= u * u * re;
    twice.sin[m]! -= u * u * im;
    const nextRe = re * stepRe - im * stepIm;
    im = re * stepIm + im * stepRe;
    re = nextRe;
  }
}

function empty(highest: number): TimedSums {
  return { cos: new Float64Array(highest + 1), sin: new Float64Array(highest + 1) };
}
