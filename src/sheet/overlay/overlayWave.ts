import type { Trace } from '../../verdict/assay.ts';

/** A wave laid out by its own cycles, so that two of different frequencies lie over each other. */
export interface OverlayWave {
  /** Cycles from a rising zero of the fundamental, ascending; shape N. */
  readonly cycles: Float64Array;
  /** In the channel's unit; NaN where there is no value; shape N. */
  readonly wave: Float64Array;
}

/** @param frequencyHz - of the fundamental, > 0. */
export function overlayWave({ timeS, wave }: Trace, frequencyHz: number): OverlayWave {
  return { cycles: timeS.map((t) => t * frequencyHz), wave };
}

/**
 * b − a at the instants of a, b taken straight between its neighbours.
 *
 * @returns shape of a; NaN where either has no value or b doesn't reach.
 */
export function waveDifference(a: OverlayWave, b: OverlayWave): Float64Array {
  let right = 1;
  return a.cycles.map((cycle, i) => {
    while (right < b.cycles.length - 1 && b.cycles[right]! < cycle) right++;
    const [from, to] = [b.cycles[right - 1], b.cycles[right]];
    if (from === undefined || to === undefined || cycle < from || cycle > to) return Number.NaN;
    const share = to > from ? (cycle - from) / (to - from) : 0;
    const [low, high] = [b.wave[right - 1]!, b.wave[right]!];
    return low + share * (high - low) - a.wave[i]!;
  });
}
