import type { KnownHarmonic, WaveTruth } from './knownWave.ts';

/** What a shape must know about itself; everything else follows. */
export interface TruthCore {
  readonly rms: number;
  readonly mean: number;
  readonly peak: number;
  readonly trough: number;
  meanAbsoluteAbout(level: number): number;
  harmonic(order: number): KnownHarmonic;
}

/** The whole truth from what the shape knows about itself. */
export function waveTruth(core: TruthCore): WaveTruth {
  const fundamentalRms = core.harmonic(1).rms;
  return {
    ...core,
    fundamentalRms,
    crestFactor() {
      if (core.rms === 0) throw new RangeError('a wave that is zero throughout has no crest factor');
      return Math.max(core.peak, -core.trough) / core.rms;
    },
    formFactor() {
      if (core.rms === 0) throw new RangeError('a wave that is zero throughout has no form factor');
      return core.rms / core.meanAbsoluteAbout(0);
    },
    thdRatio(orders) {
      if (fundamentalRms === 0) throw new RangeError('a wave without a fundamental has no THD');
      let squares = 0;
      for (let order = 2; order <= orders; order++) squares += core.harmonic(order).rms ** 2;
      return Math.sqrt(squares) / fundamentalRms;
    },
  };
}
