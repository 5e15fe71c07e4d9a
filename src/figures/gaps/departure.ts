import type { SampleRange } from '../../capture/capture.ts';
import type { SteadySide } from './steadySide.ts';

/** The sample at which a wave leaves, between the earliest and the latest that the samples allow. */
export interface Departure {
  readonly earliest: number;
  readonly latest: number;
}

/** A position in samples, known to lie within ± halfWidth. */
export interface Place {
  readonly position: number;
  readonly halfWidth: number;
}

/** A wave that leaves before sample n leaves half a sample earlier. */
export function placeOf({ earliest, latest }: Departure): Place {
  return { position: (earliest + latest) / 2 - 0.5, halfWidth: (latest - earliest) / 2 + 0.5 };
}

/**
 * Where a record stops being one wave and starts being a rest at a level: the maximum-likelihood change
 * point between two known signals in white noise.
 *
 * cost[n] = Σ_{m<n} (v − wave)² + Σ_{m≥n} (v − rest)²
 *
 * An edge falls anywhere between two samples, so the wave is taken as all it is near each.
 *
 * A crossing of zero inside the rest does not look like the wave's return, because costs add up.
 *
 * @param search - where to look; the wave comes first, then the rest. With `backwards` the other way round.
 * @param rest - level, in the unit of the samples.
 * @param noise - standard deviation, > 0.
 * @returns the samples whose cost is as good as the least within what noise does; null where the side does
 * not reach.
 */
export function departure(
  samples: Float64Array,
  side: SteadySide,
  search: SampleRange,
  rest: number,
  noise: number,
  backwards: boolean,
): Departure | null {
  const costs: number[] = [0];
  let cost = 0;
  const length = search.to - search.from;
  for (let i = 0; i < length; i++) {
    const n = backwards ? search.to - 1 - i : search.from + i;
    const v = samples[n]!;
    const [low, high] = side.rangeAt(n) ?? [Number.NaN, Number.NaN];
    if (Number.isNaN(low)) return null;
    // Where the wave itself rests there, nothing tells them apart: its own noise must not.
    const differs = rest < low - 3 * noise || rest > high + 3 * noise;
    const fromWave = Math.max(0, low - v, v - high);
    if (differs && !Number.isNaN(v)) cost += fromWave ** 2 - (v - rest) ** 2;
    costs.push(cost);
  }
  // Twice the log-likelihood ratio that 95 % of chance stays under, and some for a wave that isn't quite steady.
  const least = costs.reduce((a, b) => Math.min(a, b)) + 8 * noise ** 2;
  const first = costs.findIndex((value) => value <= least);
  const last = costs.findLastIndex((value) => value <= least);
  return backwards
    ? { earliest: search.to - last, latest: search.to - first }
    : { earliest: search.from + first, latest: search.from + last };
}
