import type { Vertex } from './polylineWave.ts';

/**
 * The two corners of a straight edge.
 *
 * @param phaseCycles - the edge's middle.
 * @param from - value before it.
 * @param to - value after it.
 * @param widthCycles - how long it takes, as a fraction of the period; 0 makes a jump.
 */
export function edge(
  phaseCycles: number,
  from: number,
  to: number,
  widthCycles: number,
): readonly [Vertex, Vertex] {
  return [
    { phaseCycles: phaseCycles - widthCycles / 2, value: from },
    { phaseCycles: phaseCycles + widthCycles / 2, value: to },
  ];
}
