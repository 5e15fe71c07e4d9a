import { type KnownWave, waveTruth } from './knownWave.ts';

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

/** The wave plus a constant, in the wave's unit. */
export function offsetWave(wave: KnownWave, offset: number): KnownWave {
  const { truth } = wave;
  return {
    kind: wave.kind,
    at: (phaseCycles) => wave.at(phaseCycles) + offset,
    truth: waveTruth({
      rms: Math.sqrt(truth.rms ** 2 + 2 * truth.mean * offset + offset ** 2),
      mean: truth.mean + offset,
      peak: truth.peak + offset,
      trough: truth.trough + offset,
      meanAbsoluteAbout: (level) => truth.meanAbsoluteAbout(level - offset),
      harmonic: truth.harmonic,
    }),
  };
}

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
