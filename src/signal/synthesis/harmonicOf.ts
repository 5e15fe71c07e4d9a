import type { KnownHarmonic } from './knownWave.ts';

/**
 * A harmonic from its cosine and sine amplitudes: a cos x + b sin x = √2 V sin(x + φ).
 *
 * @param cosine - peak amplitude a, in U.
 * @param sine - peak amplitude b, in U.
 */
export function harmonicOf(cosine: number, sine: number): KnownHarmonic {
  return { rms: Math.hypot(cosine, sine) / Math.SQRT2, phaseRad: Math.atan2(cosine, sine) };
}
