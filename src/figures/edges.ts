import type { AmplitudeLevel } from '../signal/amplitudeLevels.ts';
import { median } from '../signal/median.ts';

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
