import { atan2, exp, hypot } from '../base/elementary.ts';
import type { PeriodicRecord } from './measuredWave.ts';
import type { PeriodicQuantities } from './periodicQuantities.ts';
import type { Harmonic } from './waveFigures.ts';

/** One order with the noise that the fit leaves in it, in percent of the fundamental. */
export interface Order extends Harmonic {
  /** Standard deviation of each of its two coefficients, as an RMS. */
  readonly noisePercent: number;
  /** What rounding to codes may put into it, as an RMS. */
  readonly roundingPercent: number;
}

/** The orders fitted, each with what noise and rounding may have put into it. */
export function ordersOf(
  record: PeriodicRecord,
  { fundamental, max, min }: PeriodicQuantities,
): readonly Order[] {
  const { fit, phaseRad, noise, unrest } = record.periodic;
  // The residual of a stepped wave is mostly its orders above K, which is no noise in those below.
  const noiseShare = fit.residualDeviation > 0 ? noise / fit.residualDeviation : 0;
  // Rounding a sine of amplitude A spreads q²/12 evenly over its odd orders up to about 2πA/q; beyond, the corners
  // of its error fall with the order.
  const { stepSize } = record;
  const reach = stepSize === null ? 0 : (Math.PI * (max - min)) / stepSize;
  const even = stepSize === null ? 0 : roundingLeft(stepSize, noise) / Math.sqrt(3) / Math.sqrt(reach / 2);
  const rounding = (order: number): number => even * Math.min(1, reach / order);
  const percentOf = 100 / fundamental;
  return Array.from(fit.cosine, (cosine, i) => {
    const sine = fit.sine[i]!;
    const rms = hypot(cosine, sine) / Math.SQRT2;
    const deviation = hypot(fit.deviation.cosine[i]!, fit.deviation.sine[i]!) / 2;
    return {
      order: i + 1,
      rms,
      percent: percentOf * rms,
      phaseDeg: wrapDegrees(((atan2(cosine, sine) - (i + 1) * phaseRad) * 180) / Math.PI),
      noisePercent: percentOf * deviation * noiseShare * unrest.noiseRatio[i]!,
      roundingPercent: percentOf * rounding(i + 1),
    };
  });
}

/** Into (−180, 180]. */
function wrapDegrees(degrees: number): number {
  const turned = degrees - 360 * Math.ceil((degrees - 180) / 360);
  return turned === 0 ? 0 : turned;
}

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
