import { sin } from '../../base/elementary/sin.ts';
import { harmonicOf } from './harmonicOf.ts';
import type { KnownWave } from './knownWave.ts';
import { quadratureTruth } from './quadratureTruth.ts';
import { waveTruth } from './waveTruth.ts';

/** A half-wave rectified sine, peak 1: 1/π + sin(x)/2 − (2/π) Σ cos(nx)/(n² − 1) over even n. */
export function halfWave(): KnownWave {
  const at = (phaseCycles: number): number => Math.max(0, sin(2 * Math.PI * phaseCycles));
  return {
    kind: 'distorted sine',
    at,
    truth: waveTruth({
      ...quadratureTruth(at, [0, 0.5], 1),
      rms: 0.5,
      mean: 1 / Math.PI,
      peak: 1,
      trough: 0,
      harmonic: (order) => {
        if (order === 1) return harmonicOf(0, 0.5);
        return harmonicOf(order % 2 === 0 ? -2 / (Math.PI * (order ** 2 - 1)) : 0, 0);
      },
    }),
  };
}
