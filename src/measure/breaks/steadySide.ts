import { atan2, hypot } from '../../base/elementary.ts';
import type { SampleRange } from '../../read/capture.ts';
import { fitHarmonics } from '../../signal/fitHarmonics.ts';

/** The wave on one side of a break, carried on as if nothing had happened. */
export interface SteadySide {
  readonly periodSamples: number;
  /** Of the fundamental's sine at a position in samples, radians, not wrapped. */
  phaseRadAt(position: number): number;
  /** Standard deviation of that phase: it grows with the distance from the stretch. */
  phaseDeviationRadAt(position: number): number;
  /**
   * Lowest and highest value that the wave takes near n (JITTER_CYCLES or a sample), from the same
   * place in up to three cycles of this side; null where all of them are missing.
   */
  rangeAt(n: number): readonly [low: number, high: number] | null;
}

/** Cycles of a side that are looked at. */
const CYCLES = 5;
/** Orders that keep a stepped wave's frequency true over a few cycles. */
const ORDERS = 15;
/** How far an edge may stand from where it stood some cycles before; the frequency of few cycles is no better. */
const JITTER_CYCLES = 0.003;

/**
 * The steady wave of a stretch beside a break.
 *
 * @param range - the whole stretch; its few cycles nearest the break are used.
 * @param nearEnd - true where the break follows the stretch, false where it comes before.
 * @param omega - rough, radians a sample.
 * @returns null where the stretch holds under 1.3 cycles or shows no such wave.
 */
export function steadySide(
  samples: Float64Array,
  range: SampleRange,
  nearEnd: boolean,
  omega: number,
): SteadySide | null {
  const length = Math.min(range.to - range.from, Math.floor((CYCLES * 2 * Math.PI) / omega));
  if (length * omega < 1.3 * 2 * Math.PI) return null;
  const from = nearEnd ? range.to - length : range.from;
  const to = from + length;
  // Two unknowns an order: a stretch of few samples a cycle holds fewer.
  const orders = Math.max(1, Math.min(ORDERS, Math.floor((0.8 * Math.PI) / omega)));
  const stretch = samples.subarray(from, to);
  const fit = fitHarmonics(stretch, { orders, omega }) ?? fitHarmonics(stretch, { orders: 1, omega });
  if (fit === null) return null;
  const centre = from + (length - 1) / 2;
  const phase = atan2(fit.cosine[0]!, fit.sine[0]!);
  const amplitude = hypot(fit.cosine[0]!, fit.sine[0]!);
  // A stretch without a wave fits anything.
  if (!(amplitude > fit.residualDeviation)) return null;
  const phaseDeviation = Math.max(fit.deviation.cosine[0]!, fit.deviation.sine[0]!) / amplitude;
  const periodSamples = (2 * Math.PI) / fit.omega;
  return {
    periodSamples,
    phaseRadAt: (position) => fit.omega * (position - centre) + phase,
    phaseDeviationRadAt: (position) => hypot(phaseDeviation, fit.deviation.omega * (position - centre)),
    rangeAt(n) {
      const near = Math.max(1, JITTER_CYCLES * periodSamples);
      const values = [-1, -0.5, 0, 0.5, 1].map((by) =>
        repeatedMean(samples, { from, to }, n + by * near, periodSamples),
      );
      const present = values.filter((value) => value !== null);
      return present.length === 0 ? null : [Math.min(...present), Math.max(...present)];
    },
  };
}

/** Mean of a periodic stretch at the places whole periods from n, the three nearest to n; null where missing. */
function repeatedMean(
  samples: Float64Array,
  { from, to }: SampleRange,
  n: number,
  periodSamples: number,
): number | null {
  const direction = n >= to - 1 ? -1 : 1;
  const outside = Math.max(0, n - (to - 2), from - n);
  const first = Math.ceil(outside / periodSamples);
  let [sum, count] = [0, 0];
  for (let k = first; k < first + 3; k++) {
    const position = n + direction * k * periodSamples;
    const i = Math.floor(position);
    if (i < from || i + 1 >= to) continue;
    const value = samples[i]! + (position - i) * (samples[i + 1]! - samples[i]!);
    if (Number.isNaN(value)) continue;
    sum += value;
    count++;
  }
  return count === 0 ? null : sum / count;
}

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
