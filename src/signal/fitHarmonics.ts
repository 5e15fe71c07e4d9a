import { type CholeskyFactor, choleskyFactor } from './choleskyFactor.ts';
import { fitFolded } from './fitFolded.ts';
import { fitOfState, type HarmonicFit } from './harmonicFit.ts';
import { normalEquations, projections } from './normalEquations.ts';
import { phasors, type SampleTurns } from './phasors.ts';
import { LONG_RECORD } from './recordParts.ts';
import { storedResidual } from './residual.ts';

interface FitOptions {
  /** Orders fitted, K ≥ 1; K·omega must stay under π. */
  readonly orders: number;
  /** First guess of the angular frequency, radians a sample: within about half a cycle over the record. */
  readonly omega: number;
  /** Gauss-Newton steps at most. Default 20. */
  readonly iterations?: number;
  /** True: by folded sums, which are faster on some thousand samples or more. Default: for a long record. */
  readonly folded?: boolean;
  /** Hold `omega` as given, because another channel told it. Default false. */
  readonly frequencyKnown?: boolean;
}

/**
 * Joint least-squares fit of offset, frequency and harmonics 1 to K: the maximum-likelihood estimate in
 * white noise, on any number of cycles, whole or not.
 *
 * The model is linear in all but the frequency. For a given ω the coefficients follow from the normal
 * equations; ω moves by Gauss-Newton along that part of ∂v/∂ω which the coefficients can't imitate
 * (variable projection). It generalises the four-parameter sine fit of IEEE Std 1057 to K orders.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @returns the fit, or null where the record can't tell the parameters apart (too short for K orders) or
 * the frequency ran away from its start.
 * @throws RangeError when orders < 1 or orders·omega ≥ π.
 * @remarks Cost about 12·N·K multiplications a step; noise-free band-limited waves come back to 1e-9. Long records
 * are folded (`fitFolded`): the same estimate, its sums within 1e-6.
 * @see G. Golub, V. Pereyra, "Separable nonlinear least squares: the variable projection method and its
 * applications", Inverse Problems 19 (2003) R1; L. Kaufman, BIT 15 (1975) 49–57 for the step used.
 * @see P. Händel, "Properties of the IEEE-STD-1057 four-parameter sine wave fit algorithm", IEEE Trans.
 * Instrum. Meas. 49(6), 2000, 1189–1193.
 */
export function fitHarmonics(samples: Float64Array, options: FitOptions): HarmonicFit | null {
  const { orders, frequencyKnown = false } = options;
  const iterations = frequencyKnown ? 0 : (options.iterations ?? 20);
  let omega = options.omega;
  if (orders < 1 || !(omega > 0) || orders * omega >= Math.PI) {
    throw new RangeError(`cannot fit ${orders} orders at ${omega} rad a sample`);
  }
  if (options.folded ?? samples.length >= LONG_RECORD)
    return fitFolded(samples, { orders, omega, iterations });
  // Half a cycle over the record: past that the fit would slide into a neighbouring minimum.
  const reach = Math.PI / samples.length;
  let previousStep = Number.NaN;
  for (let i = 0; i < iterations; i++) {
    const turns = phasors(samples.length, omega);
    const state = linearFit(samples, turns, orders);
    if (state === null) return null;
    const step = frequencySlope(derivativeAndResidual(samples, turns, state), turns, state).gain;
    if (!Number.isFinite(step)) return null;
    omega += Math.max(-reach, Math.min(reach, step));
    if (Math.abs(omega - options.omega) > 0.3 * options.omega || orders * omega >= Math.PI) return null;
    // Done when the next step would move the phase at the record's ends by nothing that counts: steps shrink alike.
    const atEnds = Math.abs(step) * samples.length;
    const shrink = Math.abs(step) / previousStep;
    if (atEnds < 1e-9 || (shrink < 0.1 && atEnds * shrink < 1e-9) || (atEnds < 1e-6 && shrink >= 1)) break;
    previousStep = Math.abs(step);
  }
  const turns = phasors(samples.length, omega);
  const state = linearFit(samples, turns, orders);
  return state === null ? null : finish(samples, turns, state, frequencyKnown);
}

interface LinearState {
  readonly orders: number;
  readonly count: number;
  readonly factor: CholeskyFactor;
  /** mean, cosines 1…K, sines 1…K. */
  readonly coefficients: Float64Array;
}

function linearFit(samples: Float64Array, turns: SampleTurns, orders: number): LinearState | null {
  const { gram, right, count } = normalEquations(samples, turns, orders);
  if (count < gram.size + 2) return null;
  const factor = choleskyFactor(gram);
  if (factor === null) return null;
  return { orders, count, factor, coefficients: factor.solve(right) };
}

interface FrequencySlope {
  /** The Gauss-Newton step in ω. */
  readonly gain: number;
  /** |∂v/∂ω|² left after projecting the coefficients out. */
  readonly information: number;
  /** How the coefficients answer to a step in ω: B⁺·∂v/∂ω. */
  readonly response: Float64Array;
}

function frequencySlope(
  { derivative, residual }: DerivativeAndResidual,
  turns: SampleTurns,
  state: LinearState,
): FrequencySlope {
  let square = 0;
  let match = 0;
  for (let n = 0; n < derivative.length; n++) {
    const d = derivative[n]!;
    if (Number.isNaN(d)) continue;
    square += d * d;
    match += d * residual[n]!;
  }
  const right = projections(derivative, turns, state.orders);
  const response = state.factor.solve(right);
  let information = square;
  for (let i = 0; i < right.length; i++) information -= right[i]! * response[i]!;
  return { gain: match / information, information, response };
}

/** ∂v/∂ω = u·Σ k·(sine·cos kωu − cosine·sin kωu) and y − v, both NaN where y is missing. */
interface DerivativeAndResidual {
  readonly derivative: Float64Array;
  readonly residual: Float64Array;
}

function derivativeAndResidual(
  samples: Float64Array,
  turns: SampleTurns,
  state: LinearState,
): DerivativeAndResidual {
  const { coefficients, orders } = state;
  const derivative = new Float64Array(samples.length);
  const residual = new Float64Array(samples.length);
  const centre = (samples.length - 1) / 2;
  for (let n = 0; n < samples.length; n++) {
    const u = n - centre;
    const stepRe = turns.re[n]!;
    const stepIm = turns.im[n]!;
    let re = stepRe;
    let im = stepIm;
    let value = coefficients[0]!;
    let slope = 0;
    for (let k = 1; k <= orders; k++) {
      const cosine = coefficients[k]!;
      const sine = coefficients[orders + k]!;
      value += cosine * re + sine * im;
      slope += k * (sine * re - cosine * im);
      const nextRe = re * stepRe - im * stepIm;
      im = re * stepIm + im * stepRe;
      re = nextRe;
    }
    const missing = Number.isNaN(samples[n]!);
    derivative[n] = missing ? Number.NaN : u * slope;
    residual[n] = samples[n]! - value;
  }
  return { derivative, residual };
}

function finish(
  samples: Float64Array,
  turns: SampleTurns,
  state: LinearState,
  frequencyKnown: boolean,
): HarmonicFit {
  const { coefficients, orders, count, factor } = state;
  const left = derivativeAndResidual(samples, turns, state);
  const { residual } = left;
  let squares = 0;
  for (const r of residual) if (!Number.isNaN(r)) squares += r * r;
  return fitOfState({
    series: {
      mean: coefficients[0]!,
      cosine: coefficients.slice(1, orders + 1),
      sine: coefficients.slice(orders + 1),
    },
    omega: turns.omega,
    residual: storedResidual(residual),
    residualSquare: squares,
    count,
    variances: factor.inverseDiagonal(),
    slope: frequencyKnown ? null : frequencySlope(left, turns, state),
  });
}
