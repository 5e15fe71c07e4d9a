import { edge } from './edge.ts';
import type { KnownWave } from './knownWave.ts';
import { polylineWave } from './polylineWave.ts';

export interface SquareOptions {
  /** Time of one edge from rail to rail, as a fraction of the period. Default 0: a jump. */
  readonly edgeCycles?: number | undefined;
  /** How much of its height a top loses from start to end. Default 0. */
  readonly tiltRatio?: number | undefined;
}

/** A square wave that starts each top at ±1, rising through the middle of its edge at phase 0. */
export function squareWave({ edgeCycles = 0, tiltRatio = 0 }: SquareOptions = {}): KnownWave {
  const end = 1 - tiltRatio;
  const [first, ...rest] = [...edge(0, -end, 1, edgeCycles), ...edge(0.5, end, -1, edgeCycles)] as const;
  return polylineWave('square', [first, ...rest]);
}
