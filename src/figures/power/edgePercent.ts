import { edges } from '../edges.ts';
import type { PeriodicWave } from '../measuredWave.ts';
import type { FittedChannel } from './fittedChannel.ts';
import type { PowerBasis } from './powerBasis.ts';

/**
 * What the RMS may be off by where edges fall between samples: half an interval each way.
 *
 * @returns % of the RMS; 0 for a smooth wave, and for edges that several samples see.
 */
export function edgePercent({ samples }: FittedChannel, periodic: PeriodicWave, basis: PowerBasis): number {
  const { levels, periodSamples } = periodic;
  const edge = levels.length > 0 ? edges(samples, levels, samples.length / periodSamples) : null;
  if (edge === null || edge.riseSamples >= 3) return 0;
  const squareV = basis.fundamentalV ** 2 + basis.harmonicV ** 2;
  return (100 * (0.5 / periodSamples) * edge.squareStepsOfCycle) / (2 * squareV);
}
