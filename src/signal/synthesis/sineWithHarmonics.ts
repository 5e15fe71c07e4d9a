import { sin } from '../../base/elementary/sin.ts';
import type { KnownHarmonic, KnownWave } from './knownWave.ts';
import { quadratureTruth } from './quadratureTruth.ts';
import { sineKind } from './sineKind.ts';
import { waveTruth } from './waveTruth.ts';

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
