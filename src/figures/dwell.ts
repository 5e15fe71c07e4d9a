import type { AmplitudeLevel } from '../signal/amplitudeLevels.ts';
import type { CycleWeights } from '../signal/wholeCycleWeights.ts';

/**
 * Share of the cycle for which a stepped wave rests at its middle level, half-way crossings as the borders.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param weights - of `wholeCycleWeights`.
 * @param levels - ascending; only an odd number of them has a middle.
 * @returns 0 to 1; 0 for a smooth wave or an even number of levels.
 */
export function dwell(
  samples: Float64Array,
  weights: CycleWeights,
  levels: readonly AmplitudeLevel[],
): number {
  if (levels.length % 2 === 0) return 0;
  const middle = levels.length >> 1;
  const low = (levels[middle - 1]!.value + levels[middle]!.value) / 2;
  const high = (levels[middle]!.value + levels[middle + 1]!.value) / 2;
  let resting = 0;
  let seen = 0;
  for (let n = 0; n < samples.length; n++) {
    if (Number.isNaN(samples[n]!)) continue;
    const weight = weights.at(n);
    seen += weight;
    if (samples[n]! > low && samples[n]! < high) resting += weight;
  }
  return resting / seen;
}
