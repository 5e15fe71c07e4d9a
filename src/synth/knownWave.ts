import { atan2, hypot } from '../base/elementary.ts';
import type { WaveformKind } from '../judge/waveform/kinds.ts';

/** One harmonic of a wave of known truth. */
export interface KnownHarmonic {
  /** In the wave's unit, 0 and up. */
  readonly rms: number;
  /** φ in Σ √2 Vn sin(2πn · phaseCycles + φn), absolute, not referred to the fundamental; (−π, π]. */
  readonly phaseRad: number;
}

/** What is exactly so about a wave, before noise, offset by a probe, and quantisation. */
export interface WaveTruth {
  /** √mean(v²), DC included. */
  readonly rms: number;
  readonly mean: number;
  /** Highest and lowest value (signed) that the wave takes or comes as near to as one likes. */
  readonly peak: number;
  readonly trough: number;
  readonly fundamentalRms: number;
  /** Mean of |v − level|; level 0 gives the mean of |v|. */
  meanAbsoluteAbout(level: number): number;
  /** @param order - whole, 1 and up. */
  harmonic(order: number): KnownHarmonic;
  /** max(peak, −trough) / rms. @throws RangeError for a wave that is zero throughout. */
  crestFactor(): number;
  /** rms / mean|v|, DC included. @throws RangeError for a wave that is zero throughout. */
  formFactor(): number;
  /** Orders 2 to `orders` over the fundamental. @throws RangeError where there is no fundamental. */
  thdRatio(orders: number): number;
}

/** Edges a cycle from which a wave of two or three levels is pulse-width modulation, and none of the kinds. */
const MODULATED_EDGES = 10;

/** What a wave of so many edges a cycle is told as: its kind by levels, unless it is switched too often. */
export function switchedKind(kind: WaveformKind, edgesPerCycle: number): WaveformKind {
  return edgesPerCycle > MODULATED_EDGES ? 'not classified' : kind;
}

/** A wave as a pure function of its phase, with its exact truth. */
export interface KnownWave {
  readonly kind: WaveformKind;
  /**
   * @param phaseCycles - any finite number; 0 is where the shape's own definition starts, and for shapes
   * with quarter-wave symmetry a rising zero of the fundamental. At a jump: the value after it.
   */
  at(phaseCycles: number): number;
  readonly truth: WaveTruth;
}

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

/**
 * A harmonic from its cosine and sine amplitudes: a cos x + b sin x = √2 V sin(x + φ).
 *
 * @param cosine - peak amplitude a, in U.
 * @param sine - peak amplitude b, in U.
 */
export function harmonicOf(cosine: number, sine: number): KnownHarmonic {
  return { rms: hypot(cosine, sine) / Math.SQRT2, phaseRad: atan2(cosine, sine) };
}
