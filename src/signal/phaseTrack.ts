import { atan2, cos, hypot, sin } from '../base/elementary.ts';
import { blockMeans } from './recordParts.ts';
import { median } from './statistics.ts';

/** Half cycles each side of a crossing that its phase is taken from, at most. */
const REACH = 4;
/** Samples a cycle that the phase needs, of any wave. */
const SAMPLES_A_CYCLE = 256;
const PASSES = 8;
/** What the frequency may be off by at most, of what is started from. */
const WANDER = 0.2;

/**
 * Follow the phase of the fundamental along a record, by a weighted fit over up to four cycles around every
 * zero.
 *
 * The record is cut into half cycles at the zeros found so far. Each is multiplied by e^(−iθ), θ its own phase
 * running from 0 to π, and averaged; a sine gives a value on one axis whatever its size, so a step in
 * amplitude at a zero turns nothing, and a Hann sum over an even number of them cancels offset and every
 * harmonic. What angle is left moves the zero, until none is. The sum never reaches over a break: it
 * narrows to two half cycles beside one.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param omega - the fundamental to start from, radians a sample, within 20 % throughout.
 * @param breaks - positions in samples at which amplitude, frequency or phase jump. Half cycles without
 * voltage or with a tenth missing count as breaks too.
 * @remarks A jump of the frequency that is not told is blurred over two cycles each way: a zero next to it is
 * then off by up to 0.3 δf/f cycles.
 */
export function phaseTrack(samples: Float64Array, omega: number, breaks: readonly number[] = []): ZeroTrack {
  const period = (2 * Math.PI) / omega;
  const blockLength = Math.max(1, Math.floor(period / SAMPLES_A_CYCLE));
  const centre = (blockLength - 1) / 2;
  const record = blockLength === 1 ? samples : blockMeans(samples, blockLength);
  const jumps = breaks.map((at) => (at - centre) / blockLength);
  const spacing = period / 2 / blockLength;
  const count = Math.ceil(record.length / spacing) + 2;
  let track: ZeroTrack = {
    crossings: Float64Array.from({ length: count }, (_, m) => (m - 0.5) * spacing),
    seen: new Uint8Array(count),
  };
  for (let pass = 0; pass < PASSES; pass++) {
    const { crossings } = track;
    const cells = halfCycleCells(record, crossings);
    const phases = truePhases(crossings, cells, soundCells(crossings, jumps), spacing);
    if (phases === null) break;
    track = wholeHalfTurns(crossings, phases.halfTurns, phases.seen, record.length);
    const moved = track.crossings.map((at, m) => Math.abs(at - (crossings[m] ?? at)));
    // A thousandth of a sample: a part in 10⁵ of a cycle.
    if (track.crossings.length === crossings.length && moved.every((by) => by < 1e-3)) break;
  }
  return { crossings: track.crossings.map((at) => at * blockLength + centre), seen: track.seen };
}

/** 1 for the half cycles that no jump comes nearer than a quarter of their length. */
function soundCells(crossings: Float64Array, jumps: readonly number[]): Uint8Array {
  return Uint8Array.from({ length: crossings.length - 1 }, (_, m) => {
    const [from, to] = [crossings[m]!, crossings[m + 1]!];
    const margin = (to - from) / 4;
    return jumps.some((at) => at > from - margin && at < to + margin) ? 0 : 1;
  });
}

interface Phases {
  /** Of the fundamental at each crossing tried, in half turns, ascending. */
  readonly halfTurns: Float64Array;
  readonly seen: Uint8Array;
}

/** What the phase at every crossing tried really is; null where none shows one. */
function truePhases(
  crossings: Float64Array,
  cells: HalfCycleCells,
  sound: Uint8Array,
  spacing: number,
): Phases | null {
  const { re, im, whole } = cells;
  const sizes = re.map((x, m) => (whole[m] === 1 ? hypot(x, im[m]!) : 0));
  const largest = sizes.reduce((a, b) => Math.max(a, b), 0);
  if (largest === 0) return null;
  // A fifth of the usual half cycle: what is less is no voltage, and its phase is noise.
  const least = 0.2 * median(sizes.filter((size) => size >= 0.2 * largest));
  const usable = (cell: number): boolean => sound[cell] === 1 && sizes[cell]! >= least;
  const halfTurns = new Float64Array(re.length + 1);
  const seen = new Uint8Array(re.length + 1);
  for (let m = 1; m < re.length; m++) {
    let reach = 0;
    while (reach < REACH && usable(m - 1 - reach) && usable(m + reach)) reach++;
    if (reach === 0) continue;
    let [sumRe, sumIm] = [0, 0];
    for (let cell = m - reach; cell < m + reach; cell++) {
      const hann = cos((Math.PI * (cell + 0.5 - m)) / (2 * reach)) ** 2;
      // From half cycle to half cycle the sign of the wave turns, and so does that of e^(−iθ).
      const weight = cell % 2 === 0 ? hann : -hann;
      sumRe += weight * re[cell]!;
      sumIm += weight * im[cell]!;
    }
    seen[m] = 1;
    // sin(θ + δ) leaves ½·(sin δ − i·cos δ).
    halfTurns[m] = m + atan2(sumRe, -sumIm) / Math.PI;
  }
  return seen.includes(1) ? { halfTurns: carriedPhases(crossings, halfTurns, seen, spacing), seen } : null;
}

/**
 * Phases unwrapped where they are seen, in time order, and carried on from the nearer side, at the frequency of
 * the cycle there, where they aren't.
 *
 * @param at - positions, ascending; shape M, M ≥ 2.
 * @param halfTurns - phases at them, in half turns, known up to whole turns; only the seen are read.
 * @param seen - 1 where the phase is known; at least one is.
 * @param spacing - of half turns, rough, in the unit of the positions: what is known up to whole turns alone would as well
 * go three times as fast, and a jump of phase would start it.
 * @returns shape M, ascending.
 */
export function carriedPhases(
  at: Float64Array,
  halfTurns: Float64Array,
  seen: Uint8Array,
  spacing: number,
): Float64Array {
  const filled = Float64Array.from(halfTurns);
  // The phase at m, carried on from `from` along the cycle on its far side.
  const carried = (from: number, m: number): number => {
    const away = m > from ? -1 : 1;
    let far = from;
    while (Math.abs(far - from) < 2 && seen[far + away] === 1) far += away;
    const slope =
      far === from
        ? (m - from) / (at[m]! - at[from]!)
        : (filled[far]! - filled[from]!) / (at[far]! - at[from]!);
    const credible = Math.max((1 - WANDER) / spacing, Math.min((1 + WANDER) / spacing, slope));
    return filled[from]! + credible * (at[m]! - at[from]!);
  };
  let last = -1;
  for (let here = 0; here < filled.length; here++) {
    if (seen[here] === 0) continue;
    if (last >= 0) filled[here]! -= 2 * Math.round((filled[here]! - carried(last, here)) / 2);
    last = here;
  }
  const after = nextSeen(seen);
  let before = -1;
  for (let m = 0; m < filled.length; m++) {
    if (seen[m] === 1) {
      before = m;
      continue;
    }
    const next = after[m]!;
    const fromBefore = next === seen.length || (before >= 0 && m - before <= next - m);
    filled[m] = carried(fromBefore ? before : next, m);
  }
  // Time runs forwards, also where the phase jumps back.
  for (let m = 1; m < filled.length; m++) filled[m] = Math.max(filled[m]!, filled[m - 1]! + 0.01);
  return filled;
}

/** The index of the first seen at or after each; the length where there is none. */
function nextSeen(seen: Uint8Array): Uint32Array {
  const next = new Uint32Array(seen.length);
  let at = seen.length;
  for (let m = seen.length - 1; m >= 0; m--) {
    if (seen[m] === 1) at = m;
    next[m] = at;
  }
  return next;
}

/** The half cycles between zeros, each turned onto one axis and summed. */
interface HalfCycleCells {
  /** Mean of x·cos θ, θ from 0 to π over the half cycle; shape of the zeros less one. */
  readonly re: Float64Array;
  /** Mean of −x·sin θ. */
  readonly im: Float64Array;
  /** 1 where nine tenths or more of the half cycle is present. */
  readonly whole: Uint8Array;
}

/**
 * Mean of x·e^(−iθ) over each half cycle.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param crossings - positions in samples, ascending, at least two.
 */
function halfCycleCells(samples: Float64Array, crossings: Float64Array): HalfCycleCells {
  const count = crossings.length - 1;
  const re = new Float64Array(count);
  const im = new Float64Array(count);
  const whole = new Uint8Array(count);
  for (let m = 0; m < count; m++) {
    const start = crossings[m]!;
    const length = crossings[m + 1]! - start;
    const from = Math.max(0, Math.ceil(start));
    const to = Math.min(samples.length, Math.ceil(start + length));
    // e^(−iθ) turned on from sample to sample: exact to some ulp over the thousand samples of a half cycle.
    const step = Math.PI / length;
    const [stepRe, stepIm] = [cos(step), -sin(step)];
    let [turnRe, turnIm] = [cos(step * (from - start)), -sin(step * (from - start))];
    let present = 0;
    for (let n = from; n < to; n++) {
      const x = samples[n]!;
      if (!Number.isNaN(x)) {
        re[m]! += x * turnRe;
        im[m]! += x * turnIm;
        present++;
      }
      const nextRe = turnRe * stepRe - turnIm * stepIm;
      turnIm = turnRe * stepIm + turnIm * stepRe;
      turnRe = nextRe;
    }
    // One sample more or less at a border is no gap.
    whole[m] = present + 1 >= 0.9 * length ? 1 : 0;
    re[m]! /= length;
    im[m]! /= length;
  }
  return { re, im, whole };
}

/**
 * Where a phase is a whole number of half turns, on the straight lines between the positions it is known at.
 *
 * @param at - positions, ascending; shape M, M ≥ 2.
 * @param halfTurns - phases at them, ascending.
 * @param seen - 1 where the phase is seen there, 0 where it is carried on.
 * @param length - of the record, in samples.
 * @returns from an even turn at the last zero or two before the record to the first zero after it.
 */
export function wholeHalfTurns(
  at: Float64Array,
  halfTurns: Float64Array,
  seen: Uint8Array,
  length: number,
): ZeroTrack {
  const crossings: number[] = [];
  const shown: number[] = [];
  const last = at.length - 2;
  let m = 0;
  for (let turn = 2 * Math.floor(halfTurns[0]! / 2) - 2; (crossings.at(-1) ?? 0) < length; turn++) {
    while (m < last && halfTurns[m + 1]! < turn) m++;
    const share = (turn - halfTurns[m]!) / (halfTurns[m + 1]! - halfTurns[m]!);
    crossings.push(at[m]! + share * (at[m + 1]! - at[m]!));
    shown.push(seen[m]! & seen[m + 1]!);
  }
  const early = crossings.filter((position) => position < 0).length;
  const from = 2 * Math.floor(Math.max(0, early - 1) / 2);
  return { crossings: Float64Array.from(crossings.slice(from)), seen: Uint8Array.from(shown.slice(from)) };
}

/** Where the fundamental of a record crosses zero, its frequency free to wander and jump. */
export interface ZeroTrack {
  /**
   * Positions in samples, not rounded, ascending, one every half cycle, from the last zero before the record
   * to the first after it.
   */
  readonly crossings: Float64Array;
  /** 1 where the samples around show the crossing; 0 where it is carried on from the nearest that are. */
  readonly seen: Uint8Array;
}
