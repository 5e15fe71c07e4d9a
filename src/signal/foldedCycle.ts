import { middleRange } from './recordParts.ts';

/** A record folded onto one cycle: its points in the order of their phase. */
export interface FoldedCycle {
  /** Shape P, cycles from 0 to 1, ascending. */
  readonly phases: Float64Array;
  /** Shape P, in the unit of the samples. */
  readonly values: Float64Array;
  /** Shape P: samples that a point is the mean of. */
  readonly weights: Float64Array;
}

/** Points that a cycle is folded into at most: 8 µs of 60 Hz each. */
const MOST_POINTS = 2 ** 11;
/** Samples that are folded at most: thirty-two a point. */
const LONGEST_FOLD = 2 ** 16;
/** Cycles in the middle of a long record that are folded at least, of every so-manieth sample where need be. */
const CYCLES = 3;
/** Of the mean distance between points: closer than this they are one. */
const ONE_POINT = 0.3;

/**
 * A record folded onto one cycle, sample beside sample where they are few, means of neighbours where they are many.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param omega - radians a sample.
 * @param phaseRad - phase of the record's centre sample.
 */
export function foldedCycle(samples: Float64Array, omega: number, phaseRad: number): FoldedCycle {
  const longest = Math.max(LONGEST_FOLD, Math.ceil((2 * Math.PI * CYCLES) / omega));
  const { from, to, apart } = middleRange(samples.length, longest);
  const stride = Math.ceil((to - from) / LONGEST_FOLD);
  const length = Math.floor((to - from - 1) / stride) + 1;
  const taken =
    stride === 1
      ? samples.subarray(from, to)
      : Float64Array.from({ length }, (_, n) => samples[from + n * stride]!);
  const turning = {
    cycles: (phaseRad + omega * (apart - (to - from - 1) / 2)) / (2 * Math.PI),
    step: (omega * stride) / (2 * Math.PI),
  };
  return length > MOST_POINTS ? inCells(taken, turning) : oneByOne(taken, turning);
}

/** In cycles: where the first sample stands, and how far each goes on. */
interface Turning {
  readonly cycles: number;
  readonly step: number;
}

function inCells(samples: Float64Array, { cycles, step }: Turning): FoldedCycle {
  const sums = new Float64Array(MOST_POINTS);
  const places = new Float64Array(MOST_POINTS);
  const counts = new Float64Array(MOST_POINTS);
  for (let n = 0; n < samples.length; n++) {
    const x = samples[n]!;
    if (Number.isNaN(x)) continue;
    const turned = cycles + n * step;
    const phase = turned - Math.floor(turned);
    const cell = Math.min(MOST_POINTS - 1, Math.floor(phase * MOST_POINTS));
    sums[cell]! += x;
    places[cell]! += phase;
    counts[cell]!++;
  }
  const cells = Array.from(counts.keys()).filter((cell) => counts[cell]! > 0);
  return {
    phases: Float64Array.from(cells, (cell) => places[cell]! / counts[cell]!),
    values: Float64Array.from(cells, (cell) => sums[cell]! / counts[cell]!),
    weights: Float64Array.from(cells, (cell) => counts[cell]!),
  };
}

/** Steps of a phase: with the number of a sample behind it, it is a whole number that a double holds. */
const PHASES = 2 ** 40;

function oneByOne(samples: Float64Array, { cycles, step }: Turning): FoldedCycle {
  // Sorted as numbers: the phase in front, the sample's own number behind.
  const keys = new Float64Array(samples.length);
  let present = 0;
  for (let n = 0; n < samples.length; n++) {
    if (Number.isNaN(samples[n]!)) continue;
    const turned = cycles + n * step;
    keys[present++] = Math.floor((turned - Math.floor(turned)) * PHASES) * MOST_POINTS + n;
  }
  const phases = new Float64Array(present);
  const values = new Float64Array(present);
  const weights = new Float64Array(present);
  let last = -1;
  let first = Number.NEGATIVE_INFINITY;
  for (const key of keys.subarray(0, present).sort()) {
    const phase = Math.floor(key / MOST_POINTS) / PHASES;
    const value = samples[key % MOST_POINTS]!;
    if (phase - first < ONE_POINT / present) {
      const weight = weights[last]! + 1;
      phases[last]! += (phase - phases[last]!) / weight;
      values[last]! += (value - values[last]!) / weight;
      weights[last] = weight;
      continue;
    }
    first = phase;
    last++;
    phases[last] = phase;
    values[last] = value;
    weights[last] = 1;
  }
  const count = last + 1;
  return {
    phases: phases.slice(0, count),
    values: values.slice(0, count),
    weights: weights.slice(0, count),
  };
}
