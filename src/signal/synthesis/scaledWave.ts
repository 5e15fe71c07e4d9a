import type { KnownWave } from './knownWave.ts';
import { waveTruth } from './waveTruth.ts';

/**
 * The wave times a factor.
 *
 * @param factor - positive.
 */
export function scaledWave(wave: KnownWave, factor: number): KnownWave {
  if (!(factor > 0)) throw new RangeError(`the factor must be positive, not ${factor}`);
  const { truth } = wave;
  return {
    kind: wave.kind,
    at: (phaseCycles) => factor * wave.at(phaseCycles),
    truth: waveTruth({
      rms: factor * truth.rms,
      mean: factor * truth.mean,
      peak: factor * truth.peak,
      trough: factor * truth.trough,
      meanAbsoluteAbout: (level) => factor * truth.meanAbsoluteAbout(level / factor),
      harmonic: (order) => {
        const { rms, phaseRad } = truth.harmonic(order);
        return { rms: factor * rms, phaseRad };
      },
    }),
  };
}
