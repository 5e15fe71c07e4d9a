import { cos, sin } from '../base/elementary.ts';
import { choleskyFactor, type SymmetricMatrix } from './choleskyFactor.ts';
import { type FoldedProjections, foldedProjections } from './foldedProjections.ts';
import { fitOfState, type HarmonicFit } from './harmonicFit.ts';
import { harmonicGram } from './normalEquations.ts';
import { seriesResidual } from './residual.ts';

/** Phase at the record's ends, in radians of the highest order: a smaller step need not be folded again. */
const SMALL_STEP_RAD = 3e-4;

/**
 * The fit of `fitHarmonics` for long records: the same estimate by the same steps, its sums taken over one folded
 * cycle and its matrices in closed form.
 *
 * @returns null as `fitHarmonics` does.
 * @remarks One pass of the samples a step, whatever the number of orders; orders agree with the direct sums within
 * 1e-6 of the fundamental. The residual is worked out where it is asked for.
 */
export function fitFolded(
  samples: Float64Array,
  start: { readonly orders: number; readonly omega: number; readonly iterations: number },
): HarmonicFit | null {
  const { orders, iterations } = start;
  const { length } = samples;
  const reach = Math.PI / length;
  let omega = start.omega;
  let folded = foldedProjections(samples, omega, orders);
  let state = solved(folded, length, omega, orders);
  for (let i = 0; i < iterations; i++) {
    if (state === null || !Number.isFinite(state.gain)) return null;
    const step = Math.max(-reach, Math.min(reach, state.gain));
    omega += step;
    if (Math.abs(omega - start.omega) > 0.3 * start.omega || orders * omega >= Math.PI) return null;
    const isSmall = orders * Math.abs(step) * length < 2 * SMALL_STEP_RAD;
    folded = isSmall ? turned(folded, step, orders) : foldedProjections(samples, omega, orders);
    state = solved(folded, length, omega, orders);
    if (isSmall) break;
  }
  if (state === null) return null;
  const { coefficients, factor, information, response, count } = state;
  const series = {
    mean: coefficients[0]!,
    cosine: coefficients.slice(1, orders + 1),
    sine: coefficients.slice(orders + 1),
  };
  let explained = 0;
  for (let i = 0; i < coefficients.length; i++) explained += coefficients[i]! * folded.plain[i]!;
  return fitOfState({
    series,
    omega,
    residual: seriesResidual(samples, series, omega),
    // Rounding of sums leaves some 1e-13 of the square.
    residualSquare: Math.max(0, folded.square - explained),
    count,
    variances: factor.inverseDiagonal(),
    slope: iterations === 0 ? null : { information, response },
  });
}

/** The projections at a frequency a little off: e^(ik(ω+δ)u) ≈ (1 + ikδu)·e^(ikωu). */
function turned(folded: FoldedProjections, step: number, orders: number): FoldedProjections {
  const plain = Float64Array.from(folded.plain);
  for (let k = 1; k <= orders; k++) {
    plain[k]! -= k * step * folded.timed[orders + k]!;
    plain[orders + k]! += k * step * folded.timed[k]!;
  }
  return { ...folded, plain };
}

/** The linear fit at ω, and the Gauss-Newton step of ω from there; null where the orders can't be told apart. */
function solved(folded: FoldedProjections, length: number, omega: number, orders: number) {
  const count = length - folded.missing.length;
  if (count < 2 * orders + 3) return null;
  const [plain, timed, twice] = timedSums(length, omega, 2 * orders, folded.missing);
  const factor = choleskyFactor(harmonicGram(plain.cos, plain.sin, orders));
  if (factor === null) return null;
  const coefficients = factor.solve(folded.plain);
  // ∂v/∂ω = u·Σ (k·sine·cos kωu − k·cosine·sin kωu)
  const slope = new Float64Array(2 * orders + 1);
  for (let k = 1; k <= orders; k++) {
    slope[k] = k * coefficients[orders + k]!;
    slope[orders + k] = -k * coefficients[k]!;
  }
  const onColumns = product(harmonicGram(timed.cos, timed.sin, orders), slope);
  const response = factor.solve(onColumns);
  const information =
    dot(slope, product(harmonicGram(twice.cos, twice.sin, orders), slope)) - dot(onColumns, response);
  const gain = (dot(slope, folded.timed) - dot(onColumns, coefficients)) / information;
  return { count, factor, coefficients, response, information, gain };
}

function product({ size, values }: SymmetricMatrix, vector: Float64Array): Float64Array {
  return vector.map((_, row) => dot(values.subarray(row * size, (row + 1) * size), vector));
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

/** Σ uᵖ·cos mωu and Σ uᵖ·sin mωu over the present samples, m = 0 … M. */
interface TimedSums {
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
