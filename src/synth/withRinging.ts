import { exp, sin } from '../base/elementary.ts';
import { type KnownWave, waveTruth } from './knownWave.ts';
import { quadratureTruth } from './quadratureTruth.ts';

export interface Ringing {
  /** Size at the start of a top, before it decays, over the height 1. */
  readonly ratio: number;
  /** Its frequency over the wave's. */
  readonly order: number;
  /** Time constant of its decay, as a fraction of the period. */
  readonly decayCycles: number;
}

/** A stretch of the cycle that rings, and to which side. */
interface Top {
  readonly from: number;
  readonly to: number;
  readonly sign: number;
}

/**
 * The wave with a decaying sine on each top: ratio · e^(−u/decay) · sin(2π · order · u), u cycles after the
 * top's start. What is left of it at the top's end stops there.
 *
 * @param tops - inside one cycle from phase 0 on.
 * @param corners - the wave's own corners in cycles, ascending in [0, 1), among them the tops' ends.
 * @remarks Its truth is by numerical quadrature of the exact shape.
 */
export function withRinging(
  wave: KnownWave,
  tops: readonly Top[],
  corners: readonly number[],
  { ratio, order, decayCycles }: Ringing,
): KnownWave {
  const at = (phaseCycles: number): number => {
    const phase = phaseCycles - Math.floor(phaseCycles);
    const top = tops.find(({ from, to }) => from <= phase && phase < to);
    if (top === undefined) return wave.at(phase);
    const since = phase - top.from;
    const ring = ratio * exp(-since / decayCycles) * sin(2 * Math.PI * order * since);
    return wave.at(phase) + top.sign * ring;
  };
  return { kind: wave.kind, at, truth: waveTruth(quadratureTruth(at, corners, order)) };
}
