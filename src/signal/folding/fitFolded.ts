import { choleskyFactor, type SymmetricMatrix } from '../choleskyFactor.ts';
import { fitOfState, type HarmonicFit } from '../harmonicFit.ts';
import { harmonicGram } from '../harmonicGram.ts';
import { seriesResidual } from '../residual.ts';
import { type FoldedProjections, foldedProjections } from './foldedProjections.ts';
import { timedSums } from './timedSums.ts';

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
