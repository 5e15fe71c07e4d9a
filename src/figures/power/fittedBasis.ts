import { hypot } from '../../base/elementary/hypot.ts';
import type { FittedChannel } from './fittedChannel.ts';
import type { PowerBasis } from './powerBasis.ts';
import type { PowerMeans } from './powerMeans.ts';

/**
 * The basis of the powers: fundamentals from the fits; RMS values and active power in time.
 *
 * @param current - in step with the voltage.
 * @param means - those of the current as recorded: its RMS needs no timing, and interpolation would smooth its noise
 * away.
 */
export function fittedBasis(
  voltage: FittedChannel,
  current: FittedChannel,
  { squareV, squareA, product }: PowerMeans,
): PowerBasis {
  const [cosineV, sineV] = [voltage.fit.cosine[0]!, voltage.fit.sine[0]!];
  const [cosineA, sineA] = [current.fit.cosine[0]!, current.fit.sine[0]!];
  const amplitudeV = hypot(cosineV, sineV);
  const fundamentalV = amplitudeV / Math.SQRT2;
  const inPhaseA = (cosineV * cosineA + sineV * sineA) / amplitudeV / Math.SQRT2;
  const laggingA = (cosineV * sineA - sineV * cosineA) / amplitudeV / Math.SQRT2;
  return {
    fundamentalV,
    harmonicV: Math.sqrt(Math.max(0, squareV - fundamentalV ** 2)),
    inPhaseA,
    laggingA,
    harmonicA: Math.sqrt(Math.max(0, squareA - inPhaseA ** 2 - laggingA ** 2)),
    harmonicActiveW: product - fundamentalV * inPhaseA,
  };
}
