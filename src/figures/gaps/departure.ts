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
 * cost[n] = Σ_{m<n} (v − wave)² + Σ_{m≥n} min((v − rest)², residual²)
 *
 * An edge falls anywhere between two samples, so the wave is taken as all it is near each.
 *
 * What a lost supply leaves behind, as its filter or a motor runs down, is neither: so far from the rest no sample counts
 * for more than `residual`, so that one as far from the wave counts against it.
 *
 * A crossing of zero inside the rest does not look like the wave's return, because costs add up.
 *
 * @param search - where to look; the wave comes first, then the rest. With `backwards` the other way round.
 * @param rest - level, in the unit of the samples.
 * @param noise - standard deviation, > 0.
 * @param residual - in the unit of the samples; infinite: nothing is left behind.
 * @returns the samples whose cost is as good as the least within what noise does; null where the side does
 * not reach.
 */
export function departure(
  samples: Float64Array,
  side: SteadySide,
  search: SampleRange,
  rest: number,
  noise: number,
  residual: number,
  backwards: boolean,
): Departure | null {
  const costs: number[] = [0];
  const fromWaves: number[] = [];
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
    fromWaves.push(fromWave);
    if (differs && !Number.isNaN(v)) cost += fromWave ** 2 - Math.min((v - rest) ** 2, residual ** 2);
    costs.push(cost);
  }
  // Twice the log-likelihood ratio that 95 % of chance stays under, and some for a wave that isn't quite steady.
  const least = costs.reduce((a, b) => Math.min(a, b)) + 8 * noise ** 2;
  const last = costs.findLastIndex((value) => value <= least);
  const first = begunBefore(
    costs.findIndex((value) => value <= least),
    fromWaves,
    Math.max(4 * noise, BEGUN * residual),
    HOP_CYCLES * side.periodSamples,
  );
  return backwards
    ? { earliest: search.to - last, latest: search.to - first }
    : { earliest: search.from + first, latest: search.from + last };
}

/** Of what a residual counts for: a sample so far from the wave has begun to leave it. */
const BEGUN = 0.25;
/** Of a period: how long a residual that crosses the wave may look like it. */
const HOP_CYCLES = 0.2;
/**
 * Of the way from where it has begun to leave to where it is surely gone: so much earlier it may have left. What grows
 * with the square of time from nothing to 0.04 and 0.10 of the peak (a fiftieth hides in the jitter) does so at 0.63 and
 * 1.0 of its way: 0.63 / 0.37.
 */
const EARLIER = 1.7;

/** A residual leaves the wave by and by: the earliest sample that it may have left at, seen back from where it is gone. */
function begunBefore(gone: number, fromWaves: readonly number[], begun: number, hop: number): number {
  let seen = gone;
  for (let n = gone - 1; n >= 0 && seen - n <= hop; n--) if (fromWaves[n]! > begun) seen = n;
  return Math.max(0, Math.floor(seen - EARLIER * (gone - seen)));
}
