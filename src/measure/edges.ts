import { type AmplitudeLevel, amplitudeLevels, type LevelOptions } from '../signal/amplitudeLevels.ts';
import { median, orderStatistic } from '../signal/statistics.ts';

export interface Edges {
  /** Median over the edges, 10 to 90 %, in U per sample interval. */
  readonly slope: number;
  /** Median time from 10 to 90 %, in sample intervals; 0.8 where the edge falls between two samples. */
  readonly riseSamples: number;
  /** How many. */
  readonly perCycle: number;
  /** √Σ step², over the edges of one cycle, in U. */
  readonly stepsOfCycle: number;
  /** √Σ (step of v²)², over the edges of one cycle, in U². */
  readonly squareStepsOfCycle: number;
  /** From the first to the last of two alike (from one level to another), the longest, in sample intervals; 0: none alike. */
  readonly repeatSamples: number;
}

/**
 * The edges between the levels of a stepped wave.
 *
 * An edge runs from the last sample near one level to the first near another; its slope is taken between the
 * straight-line crossings of 10 and 90 % of the step.
 *
 * @param samples - shape N; NaN breaks an edge off. Not changed.
 * @param levels - at least two, ascending.
 * @param cycles - in the record, > 0.
 * @returns null where no edge is whole.
 */
export function edges(
  samples: Float64Array,
  levels: readonly AmplitudeLevel[],
  cycles: number,
): Edges | null {
  const slopes: number[] = [];
  const rises: number[] = [];
  let steps = 0;
  let squareSteps = 0;
  let repeatSamples = 0;
  const firstOf = new Map<number, number>();
  let from = -1;
  let left = -1;
  for (let n = 0; n < samples.length; n++) {
    const at = levelNear(samples[n]!, levels);
    if (Number.isNaN(samples[n]!)) from = -1;
    if (at < 0) continue;
    if (from >= 0 && at !== from) {
      const [low, high] = [levels[from]!.value, levels[at]!.value];
      const kind = from * levels.length + at;
      const first = firstOf.get(kind);
      if (first === undefined) firstOf.set(kind, n);
      else repeatSamples = Math.max(repeatSamples, n - first);
      const rise = riseTime(samples, left, n, low, high);
      rises.push(rise);
      slopes.push((0.8 * Math.abs(high - low)) / rise);
      steps += (high - low) ** 2;
      squareSteps += (high ** 2 - low ** 2) ** 2;
    }
    from = at;
    left = n;
  }
  if (slopes.length === 0) return null;
  return {
    slope: median(slopes),
    riseSamples: median(rises),
    perCycle: slopes.length / cycles,
    stepsOfCycle: Math.sqrt(steps / cycles),
    squareStepsOfCycle: Math.sqrt(squareSteps / cycles),
    repeatSamples,
  };
}

/** The level whose value lies within a quarter of the spacing, or −1 between levels. */
function levelNear(value: number, levels: readonly AmplitudeLevel[]): number {
  for (let i = 0; i < levels.length; i++) {
    const here = levels[i]!.value;
    const below = i > 0 ? here - levels[i - 1]!.value : Infinity;
    const above = i + 1 < levels.length ? levels[i + 1]!.value - here : Infinity;
    // The outer levels reach outwards without end: ringing and overshoot belong to them.
    if (value > here - below / 4 && value < here + above / 4) return i;
  }
  return -1;
}

function riseTime(samples: Float64Array, from: number, to: number, low: number, high: number): number {
  const share = (n: number): number => (samples[n]! - low) / (high - low);
  const crossing = (target: number): number => {
    let n = from;
    while (n + 1 < to && share(n + 1) < target) n++;
    const [before, after] = [share(n), share(n + 1)];
    return n + Math.max(0, Math.min(1, (target - before) / (after - before)));
  };
  return Math.max(0.1, crossing(0.9) - crossing(0.1));
}

interface SteppedLevels {
  /** Ascending; empty for a smooth wave. */
  readonly levels: readonly AmplitudeLevel[];
  /** Edges between them in one cycle; 0 for a smooth wave. */
  readonly switchesPerCycle: number;
}

const SMOOTH: SteppedLevels = { levels: [], switchesPerCycle: 0 };

/**
 * The levels of a stepped wave; none where the way from one to the next takes its time (the flanks of a clipped sine
 * are empty of values too, but no edges), nor where what lies between two edges is a piece of a sine and no top.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param options - `isSineAndLine`: one line makes nearly all that the wave is beside its fundamental. On the flanks of a
 * sine it makes steps, but a staircase has many lines.
 */
export function steppedLevels(
  samples: Float64Array,
  periodSamples: number,
  options: LevelOptions & { readonly isSineAndLine: boolean },
): SteppedLevels {
  const levels = amplitudeLevels(samples, options);
  if (levels.length === 0) return SMOOTH;
  const edge = edges(samples, levels, samples.length / periodSamples);
  // Edges of real converters take up to 1 % of the period; the fastest flank of a smooth wave about 4 %.
  if (edge === null || edge.riseSamples > Math.max(1.6, 0.02 * periodSamples)) return SMOOTH;
  if (!haveTops(samples, levels) || (levels.length > 3 && options.isSineAndLine)) return SMOOTH;
  return { levels, switchesPerCycle: edge.perCycle };
}

/** Of the spacing: half of the samples of a tilted or ringing top lie nearer to its level, of half a sine farther off. */
const TOP_SPREAD = 0.14;

/** And the most of them nearer than half-way to the border: of a rest with a ramp beside it, the ramp is not. */
const MOST_OF_TOP = 0.85;

function isTop(distances: Float64Array, toBorder: number): boolean {
  return (
    median(distances) < 2 * TOP_SPREAD * toBorder &&
    orderStatistic(distances, Math.floor(MOST_OF_TOP * (distances.length - 1))) < toBorder / 2
  );
}

/** Whether the wave stays near its highest and its lowest level while it is at them. */
function haveTops(samples: Float64Array, levels: readonly AmplitudeLevel[]): boolean {
  const [lowest, highest] = [levels[0]!, levels.at(-1)!];
  const lower = (lowest.value + levels[1]!.value) / 2;
  const upper = (highest.value + levels.at(-2)!.value) / 2;
  const below = samples.filter((x) => x < lower).map((x) => Math.abs(x - lowest.value));
  const above = samples.filter((x) => x > upper).map((x) => Math.abs(x - highest.value));
  if (below.length === 0 || above.length === 0) return false;
  return isTop(below, lower - lowest.value) && isTop(above, highest.value - upper);
}
