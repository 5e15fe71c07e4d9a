import { hypot } from '../base/elementary.ts';
import type { HarmonicSeries } from './harmonicSeries.ts';
import type { Residual } from './residual.ts';

export interface HarmonicFit extends HarmonicSeries {
  /** Angular frequency in radians a sample. */
  readonly omega: number;
  /** Of N samples. */
  readonly residual: Residual;
  /** Present samples. */
  readonly count: number;
  /** Σ residual². */
  readonly residualSquare: number;
  /** √(Σ residual² / (count − parameters)): the noise, where the model holds. */
  readonly residualDeviation: number;
  /** Cramér-Rao standard deviations for that residual, frequency fitted jointly unless it was held. */
  readonly deviation: {
    /** Of `omega`, radians a sample; 0 where it was held. */
    readonly omega: number;
    readonly mean: number;
    /** Of each order's cosine and sine coefficient, shape K. */
    readonly cosine: Float64Array;
    readonly sine: Float64Array;
  };
}

/** Where a fit has come to rest. */
interface FitState {
  readonly series: HarmonicSeries;
  readonly omega: number;
  readonly residual: Residual;
  /** Σ residual². */
  readonly residualSquare: number;
  readonly count: number;
  /** Diagonal of (Bᵀ·B)⁻¹: mean, cosines, sines. */
  readonly variances: Float64Array;
  /** Of the frequency: |∂v/∂ω|² that the coefficients can't imitate, and their answer to it; null: it was held. */
  readonly slope: { readonly information: number; readonly response: Float64Array } | null;
}

/** A fit with its doubts. */
export function fitOfState(state: FitState): HarmonicFit {
  const { series, omega, residual, residualSquare, count, variances, slope } = state;
  const orders = series.cosine.length;
  const parameters = variances.length + (slope === null ? 0 : 1);
  const noise = Math.sqrt(residualSquare / Math.max(1, count - parameters));
  const omegaDeviation = slope === null ? 0 : noise / Math.sqrt(slope.information);
  // Block inverse of the joint Fisher matrix: the coefficients' own variance plus what ω's doubt passes on.
  const deviations = variances.map((variance, i) =>
    hypot(noise * Math.sqrt(variance), omegaDeviation * (slope?.response[i] ?? 0)),
  );
  return {
    omega,
    ...series,
    residual,
    count,
    residualSquare,
    residualDeviation: noise,
    deviation: {
      omega: omegaDeviation,
      mean: deviations[0]!,
      cosine: deviations.slice(1, orders + 1),
      sine: deviations.slice(orders + 1),
    },
  };
}
