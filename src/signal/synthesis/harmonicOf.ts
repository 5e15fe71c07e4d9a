import { atan2 } from '../../base/elementary/atan2.ts';
import { hypot } from '../../base/elementary/hypot.ts';
import type { KnownHarmonic } from './knownWave.ts';

/**
 * A harmonic from its cosine and sine amplitudes: a cos x + b sin x = √2 V sin(x + φ).
 *
 * @param cosine - peak amplitude a, in U.
 * @param sine - peak amplitude b, in U.
 */
export function harmonicOf(cosine: number, sine: number): KnownHarmonic {
  return { rms: hypot(cosine, sine) / Math.SQRT2, phaseRad: atan2(cosine, sine) };
}
