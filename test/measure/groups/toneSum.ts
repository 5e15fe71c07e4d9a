import { fitHarmonics } from '../../../src/signal/fitHarmonics.ts';
import type { HarmonicFit } from '../../../src/signal/harmonicFit.ts';

/** A sine: frequency in Hz, RMS, phase in radians at time 0. */
export type Tone = readonly [frequencyHz: number, rms: number, phaseRad?: number];

/** Sum of sines, sampled from time 0. */
export function toneSum(tones: readonly Tone[], sampleRateHz: number, count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, n) =>
    tones.reduce(
      (sum, [hertz, rms, phaseRad = 0]) =>
        sum + rms * Math.SQRT2 * Math.sin((2 * Math.PI * hertz * n) / sampleRateHz + phaseRad),
      0,
    ),
  );
}

/** The fit at a frequency that is told, not searched for. */
export function fitAt(
  samples: Float64Array,
  frequencyHz: number,
  sampleRateHz: number,
  orders = 50,
): HarmonicFit {
  return fitHarmonics(samples, {
    orders,
    omega: (2 * Math.PI * frequencyHz) / sampleRateHz,
    iterations: 0,
  })!;
}
