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

/** The kinds that a waveform is told apart into. */
export type KnownKind =
  | 'pure sine'
  | 'distorted sine'
  | 'modified sine'
  | 'stepped'
  | 'square'
  | 'not classified';

/** Edges a cycle from which a wave of two or three levels is pulse-width modulation, and none of the kinds. */
const MODULATED_EDGES = 10;

/** What a wave of so many edges a cycle is told as: its kind by levels, unless it is switched too often. */
export function switchedKind(kind: KnownKind, edgesPerCycle: number): KnownKind {
  return edgesPerCycle > MODULATED_EDGES ? 'not classified' : kind;
}

/** A wave as a pure function of its phase, with its exact truth. */
export interface KnownWave {
  readonly kind: KnownKind;
  /**
   * @param phaseCycles - any finite number; 0 is where the shape's own definition starts, and for shapes
   * with quarter-wave symmetry a rising zero of the fundamental. At a jump: the value after it.
   */
  at(phaseCycles: number): number;
  readonly truth: WaveTruth;
}
