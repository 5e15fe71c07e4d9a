import { log } from '../../base/elementary.ts';
import type { SampleRange } from '../../read/capture.ts';
import type { HalfCycleRms } from '../envelope.ts';
import { straightScatter } from './changes.ts';
import type { EnvelopeMoves } from './envelopeMoves.ts';

export interface SteadyStretch extends SampleRange {
  /** True where it is the whole record. */
  readonly whole: boolean;
  /** True where the voltage is steady for longer than the load's current is. */
  readonly byCurrent: boolean;
}

/** Of the reference voltage, of the frequency and of the current: a stretch that wanders less, or by its own scatter, is steady. */
const WANDER_RATIO = 0.02;
const WANDER_FREQUENCY_RATIO = 0.01;
const WANDER_CURRENT_RATIO = 0.05;

/** Of the largest current: less is none, whatever it does. */
const LEAST_CURRENT_RATIO = 0.02;
/** Cycles of steady current that tell of a load; with fewer it is settled nowhere, and the voltage alone decides. */
const LEAST_LOAD_CYCLES = 4;

interface SteadyInput {
  /** Of the voltage. */
  readonly envelope: HalfCycleRms;
  /** Of the load's current on the voltage's cycles; null: not recorded, or nothing on it. */
  readonly current: HalfCycleRms | null;
  readonly moves: EnvelopeMoves;
  /** Stretches without voltage, in samples. */
  readonly dark: readonly SampleRange[];
  /** Of the record. */
  readonly sampleCount: number;
  /** Nominal voltage, or the usual RMS, in the unit of the RMS. */
  readonly reference: number;
}

/** Called with the end of a window moving on by one: how late it must start to be steady in one respect. */
type Window = (first: number, last: number) => number;

/**
 * The longest stretch without a step, a break or a strong drift of voltage, frequency or load: what voltage and waveform
 * are measured on, and the load with them. A current that comes to rest slowly is nobody's load until it has.
 *
 * @returns the whole record where all of it is steady; at least one cycle.
 */
export function longestSteadyStretch(input: SteadyInput): SteadyStretch {
  const { envelope, current, moves, reference } = input;
  const { rms, frequencyHz } = envelope;
  const windows = [
    steadyWindow(rms, Math.max(WANDER_RATIO * reference, 8 * moves.scatter)),
    steadyWindow(
      frequencyHz,
      Math.max(WANDER_FREQUENCY_RATIO * frequencyHz[0]!, 8 * straightScatter(frequencyHz)),
    ),
  ];
  const steady = longestOf(input, windows);
  if (current === null || current.rms.length !== rms.length) return { ...steady, byCurrent: false };
  const largest = current.rms.reduce((a, b) => Math.max(a, b));
  // In logarithms a ratio is a difference, whatever the size that the current settles to.
  const sizes = current.rms.map((amperes) => log(Math.max(amperes, LEAST_CURRENT_RATIO * largest)));
  const allowed = Math.max(WANDER_CURRENT_RATIO, 8 * straightScatter(sizes));
  const loaded = longestOf(input, [...windows, steadyWindow(sizes, allowed)]);
  const byCurrent = loaded.to - loaded.from < steady.to - steady.from;
  const isSettled = loaded.to - loaded.from >= LEAST_LOAD_CYCLES * (envelope.to[0]! - envelope.from[0]!);
  return { ...(isSettled ? loaded : steady), byCurrent };
}

function longestOf(
  { envelope, moves: { moves }, dark, sampleCount }: SteadyInput,
  windows: readonly Window[],
): SampleRange & { readonly whole: boolean } {
  const { rms, from, to } = envelope;
  const restless = new Uint8Array(rms.length);
  // The first settled cycle may still straddle a jump near its start.
  for (const { from: first, after } of moves) restless.fill(1, first, after.from + 1);
  const periodOf = (k: number): number => to[k]! - from[k]!;
  for (const away of dark) {
    // A cycle of margin: what comes back takes its time.
    restless.forEach((_, k) => {
      if (from[k]! < away.to + periodOf(k) && to[k]! > away.from) restless[k] = 1;
    });
  }
  let best = { first: 0, last: 0 };
  let first = 0;
  for (let last = 0; last < rms.length; last++) {
    first = restless[last] === 1 ? last + 1 : Math.max(...windows.map((startOf) => startOf(first, last)));
    if (first > last) continue;
    if (to[last]! - from[first]! > to[best.last]! - from[best.first]!) best = { first, last };
  }
  const whole = best.first === 0 && best.last === rms.length - 1 && dark.length === 0;
  const found = {
    // Nothing is known against what lies beyond the first and last whole cycle.
    from: best.first === 0 && !dark.some((away) => away.from === 0) ? 0 : Math.ceil(from[best.first]!),
    to:
      best.last === rms.length - 1 && !dark.some((away) => away.to === sampleCount)
        ? sampleCount
        : Math.floor(to[best.last]!) + 1,
    whole,
  };
  // Beside stretches without voltage a short one is all there is, settled or not.
  const isShort = found.to - found.from < LEAST_CYCLES * periodOf(best.first);
  return isShort && dark.length > 0 ? longestLit(dark, sampleCount) : found;
}

/** Cycles that a wave is better measured on than on all that lies between two stretches without voltage. */
const LEAST_CYCLES = 2;

function longestLit(
  dark: readonly SampleRange[],
  sampleCount: number,
): SampleRange & { readonly whole: boolean } {
  let best = { from: 0, to: 0 };
  let from = 0;
  for (const away of [...dark, { from: sampleCount, to: sampleCount }]) {
    if (away.from - from > best.to - best.from) best = { from, to: away.from };
    from = away.to;
  }
  return { ...best, whole: false };
}

/** The window whose values stay within a span of each other. */
function steadyWindow(values: Float64Array, allowed: number): Window {
  let start = 0;
  let [low, high] = [0, 0];
  return (first, last) => {
    const value = values[last]!;
    if (first > start || last === first) {
      start = first;
      [low, high] = extremes(values, start, last);
    }
    if (high - value > allowed || value - low > allowed) {
      start = last;
      while (start > first && Math.abs(values[start - 1]! - value) <= allowed) start--;
      [low, high] = extremes(values, start, last);
    }
    [low, high] = [Math.min(low, value), Math.max(high, value)];
    return start;
  };
}

function extremes(values: Float64Array, first: number, last: number): [low: number, high: number] {
  let [low, high] = [values[last]!, values[last]!];
  for (let k = first; k < last; k++) {
    low = Math.min(low, values[k]!);
    high = Math.max(high, values[k]!);
  }
  return [low, high];
}
