import { hypot } from '../../base/elementary/hypot.ts';
import type { PowerBasis } from './powerBasis.ts';
import { type DoubtedChannel, offsetHalfWidth } from './powerInfluences.ts';

export interface FloorInput {
  readonly basis: PowerBasis;
  readonly voltage: DoubtedChannel;
  readonly current: DoubtedChannel;
  readonly averagedSamples: number;
  readonly skewDoubtS: number;
  readonly omegaPerS: number;
}

/**
 * What the measuring chain alone would show on this voltage at a resistor that takes as much current: nothing but
 * fundamentals in phase, and beside them the scope's own distortion, the noise counted in, as much of each mean as an
 * offset may be, and the time between probe and clamp.
 */
export function floorBasis(input: FloorInput): PowerBasis {
  const { basis, voltage, current, averagedSamples, skewDoubtS, omegaPerS } = input;
  const fundamentalA = hypot(basis.inPhaseA, basis.laggingA);
  const beside = (channel: DoubtedChannel, fundamental: number): number =>
    hypot(
      (channel.instrument.distortionPercent / 100) * fundamental,
      channel.noise,
      Math.min(Math.abs(channel.mean), offsetHalfWidth(channel)),
    );
  return {
    fundamentalV: basis.fundamentalV,
    harmonicV: beside(voltage, basis.fundamentalV),
    inPhaseA: fundamentalA,
    laggingA: hypot(omegaPerS * skewDoubtS * fundamentalA, current.noise / Math.sqrt(averagedSamples)),
    harmonicA: beside(current, fundamentalA),
    harmonicActiveW: 0,
  };
}
