import { RUN_SAMPLES } from '../signal/recordParts.ts';
import type { Outlier, PeriodicRecord, PeriodicWave } from './measuredWave.ts';

/** What a record's outliers are told by. */
type ShapedRecord = Pick<PeriodicRecord, 'samples' | 'stepSize'> & {
  readonly periodic: Pick<PeriodicWave, 'noise' | 'levels' | 'periodSamples' | 'cycle' | 'fit'>;
};

/** Standard deviations of the noise that a sample must stand off. */
const DEVIATIONS = 8;
/** Of the record's range: edges overshoot by different amounts from cycle to cycle, as samples fall. */
const EDGE_RATIO = 0.1;
/** Samples on either side that may explain one. */
const NEIGHBOURS = 3;
/** Cycles before and after that may explain it. */
const CYCLES = 2;

/**
 * Single samples that stand off their surroundings by more than eight standard deviations, as a damaged cell of a file
 * does: outside the range of their three neighbours each way, and outside that of the same place in the cycles beside.
 *
 * @returns in time order; of a stepped wave only what stands off by a tenth of its range too.
 * @remarks Two wrong samples side by side explain each other. So does a disturbance that the scope really saw over
 * several samples.
 */
export function outliers({ samples, stepSize, periodic }: ShapedRecord): readonly Outlier[] {
  const { noise, levels, periodSamples, cycle, fit } = periodic;
  // With few samples a cycle a smooth wave's own crest stands off its neighbours; its fit knows of it.
  const isOfFit = (n: number): boolean =>
    levels.length === 0 && Math.abs(fit.residual.stretch(n, n + 1)[0]!) < least;
  const height = cycle.reduce((a, b) => Math.max(a, b)) - cycle.reduce((a, b) => Math.min(a, b));
  const least = Math.max(
    DEVIATIONS * Math.max(noise, (stepSize ?? 0) / 2),
    levels.length > 0 ? EDGE_RATIO * height : 0,
  );
  const found: Outlier[] = [];
  const end = samples.length - 1;
  for (let from = 1; from < end; from += RUN_SAMPLES) {
    const to = Math.min(end, from + RUN_SAMPLES);
    for (let n = nextBend(samples, from, to, least); n < to; n = nextBend(samples, n + 1, to, least)) {
      if (isExplained(samples, n, periodSamples, least) || isOfFit(n)) continue;
      found.push({ sample: n, value: samples[n]! });
    }
  }
  return found;
}

/** The first sample from one on that stands off its two neighbours; `to` where none does. Edges bend too. */
function nextBend(samples: Float64Array, from: number, to: number, least: number): number {
  let n = from;
  while (n < to && !(Math.abs(samples[n]! - (samples[n - 1]! + samples[n + 1]!) / 2) > least)) n++;
  return n;
}

function isExplained(samples: Float64Array, n: number, periodSamples: number, least: number): boolean {
  const value = samples[n]!;
  return [0, ...aside(periodSamples)].some((by) => {
    const [low, high] = rangeAround(samples, n + by, n);
    return value > low - least && value < high + least;
  });
}

/** Whole cycles each way, in samples. */
function aside(periodSamples: number): readonly number[] {
  return Array.from({ length: CYCLES }, (_, i) => Math.round((i + 1) * periodSamples)).flatMap((by) => [
    -by,
    by,
  ]);
}

/** Lowest and highest of the samples around a place, but for one; inside out where there is none. */
function rangeAround(samples: Float64Array, at: number, but: number): readonly [low: number, high: number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let n = Math.max(0, at - NEIGHBOURS); n <= Math.min(samples.length - 1, at + NEIGHBOURS); n++) {
    const x = samples[n]!;
    if (n === but || Number.isNaN(x)) continue;
    if (x < low) low = x;
    if (x > high) high = x;
  }
  return [low, high];
}
