import { edge } from './edge.ts';
import type { KnownWave } from './knownWave.ts';
import { polylineWave } from './polylineWave.ts';
import { type Ringing, withRinging } from './withRinging.ts';

export interface ModifiedSineOptions {
  /** Part of the cycle not spent at zero, measured between the middles of the edges; above 0, at most 1. */
  readonly dutyRatio: number;
  /** Time of one edge between zero and a top, as a fraction of the period. Default 0: a jump. */
  readonly edgeCycles?: number | undefined;
  /** How much of its height a top loses from start to end. Default 0. */
  readonly tiltRatio?: number | undefined;
  /** Default none. */
  readonly ringing?: Ringing | undefined;
}

/**
 * A "modified sine": +1, 0, −1 with dwell at zero; also called quasi-square. The positive pulse is centred
 * at phase 1/4. Each top starts at ±1 before ringing.
 *
 * @remarks Duty 1 has no dwell left and is a square wave; edges must then be jumps.
 */
export function modifiedSine(options: ModifiedSineOptions): KnownWave {
  const { dutyRatio, edgeCycles = 0, tiltRatio = 0, ringing } = options;
  if (!(dutyRatio > 0 && dutyRatio <= 1)) {
    throw new RangeError(`duty must lie above 0 and up to 1, not ${dutyRatio}`);
  }
  const rise = 0.25 - dutyRatio / 4;
  const fall = 0.25 + dutyRatio / 4;
  const end = 1 - tiltRatio;
  const [first, ...rest] = [
    ...edge(rise, 0, 1, edgeCycles),
    ...edge(fall, end, 0, edgeCycles),
    ...edge(rise + 0.5, 0, -1, edgeCycles),
    ...edge(fall + 0.5, -end, 0, edgeCycles),
  ] as const;
  const vertices = [first, ...rest] as const;
  const wave = polylineWave(dutyRatio < 1 ? 'modified sine' : 'square', vertices);
  if (ringing === undefined) return wave;
  const tops = [
    { from: rise + edgeCycles / 2, to: fall - edgeCycles / 2, sign: 1 },
    { from: 0.5 + rise + edgeCycles / 2, to: 0.5 + fall - edgeCycles / 2, sign: -1 },
  ];
  return withRinging(
    wave,
    tops,
    vertices.map((vertex) => vertex.phaseCycles),
    ringing,
  );
}
