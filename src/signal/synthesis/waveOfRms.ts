import type { KnownWave } from './knownWave.ts';
import { scaledWave } from './scaledWave.ts';

/**
 * The wave scaled so that its RMS, DC included, is the one asked for.
 *
 * @param rms - positive, in U.
 * @throws RangeError for a wave that is zero throughout.
 */
export function waveOfRms(wave: KnownWave, rms: number): KnownWave {
  if (wave.truth.rms === 0) throw new RangeError('a wave that is zero throughout has no RMS to scale');
  return scaledWave(wave, rms / wave.truth.rms);
}
