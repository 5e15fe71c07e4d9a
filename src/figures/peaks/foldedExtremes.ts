import { type FoldedCycle, foldedCycle } from '../../signal/foldedCycle.ts';
import type { HarmonicFit } from '../../signal/harmonicFit.ts';
import { sampleCycle } from '../../signal/harmonicSeries.ts';
import { median } from '../../signal/median.ts';
import { type FoldedTop, foldedTop } from './foldedTop.ts';

/** Highest and lowest of the folded cycle; `value` of the trough with its sign. */
export interface FoldedExtremes {
  readonly peak: FoldedTop;
  readonly trough: FoldedTop;
  /** Standard deviation of one sample as the folded cycle shows it, rounding included, in U. */
  readonly noise: number;
  /** Whether it jumps from one point to the next, so that where it does is known to a sample only. */
  readonly jumps: boolean;
}

/** What else is known of the record. */
interface SeenBeside {
  /** Standard deviation of a sample as seen from sample to sample, in U. */
  readonly noise: number;
  /** Of the orders, by which noise stands above white noise of the fit's residual; 1 where it is white. */
  readonly noiseRatio: number;
  /** Of the digitiser, in U; null where there is none to see. */
  readonly stepSize: number | null;
  /** True where the wave is known to have edges. */
  readonly isStepped: boolean;
}

/**
 * Peak and trough of a wave that the orders fitted don't follow, from the record folded onto one cycle; null for a wave
 * that they follow to within its noise.
 *
 * @param samples - shape N, of the fit; NaN marks a missing sample. Not changed.
 * @param phaseRad - of the fundamental at the record's centre.
 */
export function foldedExtremes(
  samples: Float64Array,
  fit: HarmonicFit,
  phaseRad: number,
  { noise, noiseRatio, stepSize, isStepped }: SeenBeside,
): FoldedExtremes | null {
  const cycle = foldedCycle(samples, fit.omega, phaseRad);
  if (cycle.phases.length < FEWEST_POINTS) return null;
  const scattered = Math.max(noise, noiseAlong(cycle));
  // Noise that neighbours share, as those that were drawn between real samples do, shows between cycles only.
  const slow = noiseRatio > 1 ? noiseRatio * fit.residualDeviation : 0;
  if (!isStepped && isFollowed(cycle, fit, phaseRad, Math.max(scattered, slow), stepSize ?? 0)) return null;
  // Rounding is a noise of its own, which the record may not show.
  const deviation = Math.max(scattered, (stepSize ?? 0) / Math.sqrt(12));
  const trough = foldedTop({ ...cycle, values: cycle.values.map((v) => -v) }, deviation);
  return {
    peak: foldedTop(cycle, deviation),
    trough: { ...trough, value: -trough.value },
    noise: deviation,
    jumps: hasJump(cycle, deviation),
  };
}

/** Of the wave's height: a step that large between two points is no slope, which is seen on points beside it too. */
const JUMP = 0.1;

/** Whether somewhere the cycle goes on by more than both its neighbouring steps together, noise aside. */
function hasJump({ values }: FoldedCycle, noise: number): boolean {
  let [high, low] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const v of values) [high, low] = [Math.max(high, v), Math.min(low, v)];
  const least = Math.max(JUMP * (high - low), CHANCE * Math.SQRT2 * noise);
  const count = values.length;
  const step = (i: number): number => Math.abs(values[(i + 1) % count]! - values[(i + count) % count]!);
  for (let i = 0; i < count; i++) if (step(i) > least && step(i) > step(i - 1) + step(i + 1)) return true;
  return false;
}

/** Under so many points a cycle has no shape to smooth. */
const FEWEST_POINTS = 64;
/** Noise of one sample from point to point along the folded cycle, off the line between two: it holds what cycles differ by. */
function noiseAlong({ phases, values, weights }: FoldedCycle): number {
  const sizes = new Float64Array(values.length - 2);
  for (let i = 1; i + 1 < values.length; i++) {
    const share = (phases[i]! - phases[i - 1]!) / (phases[i + 1]! - phases[i - 1]!);
    const apart = values[i]! - (1 - share) * values[i - 1]! - share * values[i + 1]!;
    const variance = 1 / weights[i]! + (1 - share) ** 2 / weights[i - 1]! + share ** 2 / weights[i + 1]!;
    sizes[i - 1] = Math.abs(apart) / Math.sqrt(variance);
  }
  // 0.6745: the median of |x| of a standard normal.
  return median(sizes) / 0.6744897501960817;
}

/** Points of the series' own cycle: the nearest is off by less than is looked for. */
const SERIES_POINTS = 2 ** 13;
/** Points whose mean is held against the series. */
const LOOK = 8;
/** Standard deviations of such a mean that white noise doesn't reach in thousands of them. */
const CHANCE = 5.5;
/** Of the wave's height, under which nobody would see it. */
const UNSEEN = 1e-3;

/** Nowhere do eight neighbouring points together stand off the series by more than noise and rounding explain. */
function isFollowed(
  { phases, values, weights }: FoldedCycle,
  fit: HarmonicFit,
  phaseRad: number,
  noise: number,
  step: number,
): boolean {
  const series = sampleCycle(fit, SERIES_POINTS, -phaseRad);
  const left = values.map((v, i) => v - series[Math.round(phases[i]! * SERIES_POINTS) % SERIES_POINTS]!);
  let [high, low] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const v of values) [high, low] = [Math.max(high, v), Math.min(low, v)];
  const least = Math.max(UNSEEN * (high - low), 0.6 * step);
  let [sum, weight] = [0, 0];
  for (let i = 0; i < left.length; i++) {
    sum += left[i]! * weights[i]!;
    weight += weights[i]!;
    if (i < LOOK - 1) continue;
    if (Math.abs(sum) / weight > least + (CHANCE * noise) / Math.sqrt(weight)) return false;
    sum -= left[i - LOOK + 1]! * weights[i - LOOK + 1]!;
    weight -= weights[i - LOOK + 1]!;
  }
  return true;
}
