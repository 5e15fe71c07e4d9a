import { asin, cos, sin } from '../base/elementary.ts';
import type { WaveformKind } from '../judge/waveform/kinds.ts';
import { harmonicOf, type KnownHarmonic, type KnownWave, type WaveTruth, waveTruth } from './knownWave.ts';
import { gaussLegendre, integral, quadratureTruth } from './quadratureTruth.ts';

/** A pure sine, peak 1. */
export function sineWave(): KnownWave {
  return sineWithHarmonics([]);
}

export interface HarmonicPart {
  /** Whole, 2 and up; each order once. */
  readonly order: number;
  /** Over the fundamental, 0 and up. */
  readonly ratio: number;
  /** φ in ratio · sin(2π · order · phaseCycles + φ). */
  readonly phaseRad: number;
}

/**
 * sin(2πx) + Σ ratio · sin(2π · order · x + φ): the fundamental's peak is 1.
 *
 * @remarks RMS, mean and harmonics are exact; the extremes and the mean of |v| are found numerically on
 * the exact shape, except for the sine alone.
 */
export function sineWithHarmonics(parts: readonly HarmonicPart[]): KnownWave {
  const spectrum = new Map<number, KnownHarmonic>([[1, { rms: Math.SQRT1_2, phaseRad: 0 }]]);
  for (const { order, ratio, phaseRad } of parts) {
    if (!(Number.isInteger(order) && order >= 2) || spectrum.has(order) || !(ratio >= 0)) {
      throw new RangeError(`not a harmonic of its own: order ${order}, ratio ${ratio}`);
    }
    const turns = Math.ceil(phaseRad / (2 * Math.PI) - 0.5);
    spectrum.set(order, { rms: ratio * Math.SQRT1_2, phaseRad: phaseRad - 2 * Math.PI * turns });
  }
  const at = (phaseCycles: number): number => {
    const cycle = phaseCycles - Math.floor(phaseCycles);
    let value = sin(2 * Math.PI * cycle);
    for (const { order, ratio, phaseRad } of parts) {
      value += ratio * sin(2 * Math.PI * order * cycle + phaseRad);
    }
    return value;
  };
  const numeric = quadratureTruth(at, [], Math.max(...spectrum.keys()));
  const truth = waveTruth({
    ...numeric,
    ...(parts.length === 0 && { peak: 1, trough: -1 }),
    rms: Math.sqrt([...spectrum.values()].reduce((sum, { rms }) => sum + rms ** 2, 0)),
    mean: 0,
    harmonic: (order) => spectrum.get(order) ?? { rms: 0, phaseRad: 0 },
  });
  return { kind: sineKind(truth), at, truth };
}

/**
 * A sine of peak 1 with switching ripple: one small fast sine that need not be a harmonic.
 *
 * @param order - the ripple's frequency over the fundamental's, above 1, not necessarily whole.
 * @param ratio - the ripple over the fundamental, 0 to below 1.
 * @remarks Where the order is not whole the wave never repeats: its truth is that of an endless record,
 * in which every phase of the ripple meets every phase of the sine. The peak is then that of the wave
 * itself, not of a mean cycle, from which such ripple averages away.
 */
export function sineWithRipple(order: number, ratio: number): KnownWave {
  if (!(order > 1 && ratio >= 0 && ratio < 1)) {
    throw new RangeError(`ripple must be faster and smaller than the wave: order ${order}, ratio ${ratio}`);
  }
  if (Number.isInteger(order)) return sineWithHarmonics([{ order, ratio, phaseRad: 0 }]);
  const rule = gaussLegendre(20);
  return {
    kind: 'pure sine',
    at: (phaseCycles) => sin(2 * Math.PI * phaseCycles) + ratio * sin(2 * Math.PI * order * phaseCycles),
    truth: waveTruth({
      rms: Math.sqrt((1 + ratio ** 2) / 2),
      mean: 0,
      peak: 1 + ratio,
      trough: -1 - ratio,
      meanAbsoluteAbout: (level) => {
        // The sine takes each value twice a cycle; 4000 panels keep the bend at |s| = ratio below 1e-8.
        const distance = (x: number): number => meanDistance(sin(Math.PI * x) - level, ratio);
        return integral(distance, -0.5, 0.5, 4000, rule);
      },
      harmonic: (n) => ({ rms: n === 1 ? Math.SQRT1_2 : 0, phaseRad: 0 }),
    }),
  };
}

/** Mean of |s + r sin θ| over θ. */
function meanDistance(s: number, r: number): number {
  if (Math.abs(s) >= r) return Math.abs(s);
  return (2 / Math.PI) * (s * asin(s / r) + Math.sqrt(r * r - s * s));
}

/**
 * A sine of peak 1 cut off flat at ±clip, as an overloaded inverter gives it.
 *
 * With θ = asin(clip) the quarter wave is sin x up to θ and clip from there on.
 *
 * @param clip - over the sine's own peak, above 0, at most 1.
 */
export function clippedSine(clip: number): KnownWave {
  if (!(clip > 0 && clip <= 1)) throw new RangeError(`clip must lie above 0 and up to 1, not ${clip}`);
  const theta = asin(clip);
  const corner = theta / (2 * Math.PI);
  const at = (phaseCycles: number): number => Math.min(clip, Math.max(-clip, sin(2 * Math.PI * phaseCycles)));
  const truth = waveTruth({
    ...quadratureTruth(at, [corner, 0.5 - corner, 0.5 + corner, 1 - corner], 1),
    rms: Math.sqrt((theta - sin(2 * theta) / 2 + clip ** 2 * (Math.PI - 2 * theta)) / Math.PI),
    mean: 0,
    peak: clip,
    trough: -clip,
    harmonic: (order) => harmonicOf(0, order % 2 === 0 ? 0 : (4 / Math.PI) * quarterSine(theta, clip, order)),
  });
  return { kind: sineKind(truth), at, truth };
}

/** ∫ v sin nx over the quarter wave. */
function quarterSine(theta: number, clip: number, n: number): number {
  const flat = (clip * cos(n * theta)) / n;
  if (n === 1) return theta / 2 - sin(2 * theta) / 4 + flat;
  const below = sin((n - 1) * theta) / (n - 1);
  const above = sin((n + 1) * theta) / (n + 1);
  return (below - above) / 2 + flat;
}

/** Pure or distorted by the usual bench threshold: THD to order 50 up to 5 %, crest factor 1.35 to 1.49. */
function sineKind(truth: WaveTruth): WaveformKind {
  const crestFactor = truth.crestFactor();
  const pure = truth.thdRatio(50) <= 0.05 && crestFactor >= 1.35 && crestFactor <= 1.49;
  return pure ? 'pure sine' : 'distorted sine';
}
