import { edge } from './edge.ts';
import type { KnownKind, KnownWave } from './knownWave.ts';
import { polylineWave, type Vertex } from './polylineWave.ts';

export interface QuarterWaveStep {
  /** Where the step stands, 0 to below 1/4 cycle. */
  readonly phaseCycles: number;
  /** How much the wave rises there. */
  readonly rise: number;
}

/**
 * A wave of steps with quarter-wave symmetry, told by the steps of its first quarter.
 *
 * @param steps - ascending in phase. A step at phase 0 is the whole rise there, half of it below zero.
 * @param edgeCycles - time of each edge as a fraction of the period; 0 for jumps.
 */
export function quarterWaveSteps(
  kind: KnownKind,
  steps: readonly QuarterWaveStep[],
  edgeCycles: number,
): KnownWave {
  if (steps.length === 0 || steps.some(({ phaseCycles }) => !(phaseCycles >= 0 && phaseCycles < 0.25))) {
    throw new RangeError('steps must lie from 0 to below 90 degrees, and there must be one');
  }
  const mirrored = steps.toReversed().map(({ phaseCycles, rise }) => ({
    phaseCycles: 0.5 - phaseCycles,
    rise: -rise,
  }));
  // A step at 0 is also the mirror image of the one at 1/2, so it is not mirrored a second time.
  const half = [...steps, ...mirrored.filter(({ phaseCycles }) => phaseCycles < 0.5)];
  const cycle = [
    ...half,
    ...half.map(({ phaseCycles, rise }) => ({ phaseCycles: phaseCycles + 0.5, rise: -rise })),
  ];
  let level = steps[0]?.phaseCycles === 0 ? -steps[0].rise / 2 : 0;
  const [first, ...rest] = cycle.flatMap(({ phaseCycles, rise }) => {
    const from = level;
    level += rise;
    return edge(phaseCycles, from, level, edgeCycles);
  });
  return polylineWave(kind, [first as Vertex, ...rest]);
}
