import { log } from '../base/elementary.ts';
import { type FoldedCycle, foldedCycle } from '../signal/foldedCycle.ts';
import type { HarmonicFit } from '../signal/harmonicFit.ts';
import { sampleCycle } from '../signal/harmonicSeries.ts';
import { gaussianNumbers, randomNumbers } from '../signal/randomNumbers.ts';
import { median, NORMAL_MEDIAN } from '../signal/statistics.ts';
import { oneSidedLines } from './oneSidedLines.ts';

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
  return median(sizes) / NORMAL_MEDIAN;
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

/** The highest value of a folded cycle, without what noise adds to a maximum. */
export interface FoldedTop {
  /** In U. */
  readonly value: number;
  /** Standard deviation of what noise, and the doubt about its excess, leave in it, in U. */
  readonly scatter: number;
  /** What may lie between two points beside it: the slope there over the widest gap, in U, ≥ 0. */
  readonly betweenPoints: number;
  /** What it changes by at a third of the width, in U, ≥ 0. */
  readonly bySmoothing: number;
}

/** Points of a line, from those that show the narrowest top on. */
const REACHES = [4, 12, 36] as const;
/** Repeats of the noise. */
const REPEATS = 6;
/** Standard deviations that two widths may differ by and still see the same top. */
const SAME = 1.5;
/** How far the excess itself is known: the smoothed record that noise is put on holds some already. */
const EXCESS_DOUBT = 0.5;

/**
 * The highest point of a folded cycle smoothed by one-sided lines, less the mean excess that the same procedure has on
 * noise of the record's size, drawn from a fixed seed.
 *
 * @param noise - standard deviation of one sample, in U.
 * @remarks The widest lines whose top agrees with that of a third of their width: on a flat top they average noise away, on
 * one that rings they stay as short as the ringing. It is never under what the highest point and the noise allow.
 */
function foldedTop(cycle: FoldedCycle, noise: number): FoldedTop {
  let kept = topAt(cycle, noise, REACHES[0]);
  let bySmoothing = 0;
  let isShortest = true;
  for (const reach of REACHES.slice(1)) {
    if (reach > cycle.phases.length / 8) break;
    const wider = topAt(cycle, noise, reach);
    const change = Math.abs(wider.value - kept.value);
    const isSame = change <= SAME * kept.scatter + 1e-4 * Math.abs(kept.value);
    // What a line cuts off a top grows with the square of its length: of the change, an eighth lies in the shorter.
    if (isSame) bySmoothing = change;
    else if (isShortest) bySmoothing = change / 4;
    if (!isSame) break;
    isShortest = false;
    kept = wider;
  }
  return { ...kept, value: Math.max(kept.value, leastTop(cycle, noise)), bySmoothing };
}

/** The highest of the points, each less what noise lifts the highest of so many by and two deviations more. */
function leastTop({ values, weights }: FoldedCycle, noise: number): number {
  const lifted = (Math.sqrt(2 * log(values.length)) + 2) * noise;
  return values.reduce(
    (most, value, i) => Math.max(most, value - lifted / Math.sqrt(weights[i]!)),
    -Infinity,
  );
}

function topAt(cycle: FoldedCycle, noise: number, reach: number): Omit<FoldedTop, 'bySmoothing'> {
  const { weights, values } = cycle;
  const linesOf = oneSidedLines(cycle, reach);
  const seen = linesOf(values);
  const smooth = new Float64Array(values.length);
  let [best, slope] = [0, 0];
  for (let i = 0; i < values.length; i++) {
    const line = seen(i);
    smooth[i] = line.value;
    if (i > 0 && line.value <= smooth[best]!) continue;
    best = i;
    slope = line.slope;
  }
  const top = smooth[best]!;
  const betweenPoints = Math.abs(slope) * gapBeside(cycle, best);
  if (noise === 0) return { value: top, scatter: 0, betweenPoints };
  // Nothing farther below than noise reaches can become the highest; of a noise that is lost beside it, itself alone.
  const near = Array.from(smooth.keys()).filter((i) => smooth[i]! >= top - NOISE_REACHES * noise);
  const deviations = weights.map((weight) => noise / Math.sqrt(weight));
  const noisy = new Float64Array(values.length);
  const normal = drawnNoise();
  let sum = 0;
  let square = 0;
  for (let repeat = 0; repeat < REPEATS; repeat++) {
    // From another place of the table each time.
    const from = repeat * 1607 + reach;
    for (let i = 0; i < noisy.length; i++) {
      noisy[i] = smooth[i]! + deviations[i]! * normal[(from + i) & (DRAWN - 1)]!;
    }
    const again = linesOf(noisy);
    let most = Number.NEGATIVE_INFINITY;
    for (const i of near) most = Math.max(most, again(i).value);
    sum += most - top;
    square += (most - top) ** 2;
  }
  const excess = sum / REPEATS;
  const variance = Math.max(0, square / REPEATS - excess * excess) + (EXCESS_DOUBT * excess) ** 2;
  return { value: top - excess, scatter: Math.sqrt(variance), betweenPoints };
}

/** The widest gap between the points around one, in cycles. */
function gapBeside({ phases }: FoldedCycle, point: number): number {
  const count = phases.length;
  let widest = 0;
  for (let i = point - BESIDE; i < point + BESIDE; i++) {
    const gap = phases[(i + 1 + count) % count]! - phases[(i + count) % count]!;
    widest = Math.max(widest, gap - Math.floor(gap));
  }
  return widest;
}

/** Points on either side of the highest that the wave's own may stand between. */
const BESIDE = 1;

/** Standard deviations of one sample's noise. */
const NOISE_REACHES = 4;
/** Numbers of the table of noise; a power of two. */
const DRAWN = 2 ** 14;
let drawn: Float64Array | null = null;

/** Normal numbers of a fixed seed, drawn once: the same record has the same figures wherever it is measured. */
function drawnNoise(): Float64Array {
  if (drawn === null) {
    const normal = gaussianNumbers(randomNumbers(1));
    drawn = Float64Array.from({ length: DRAWN }, normal);
  }
  return drawn;
}
