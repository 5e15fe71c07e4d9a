import { median } from '../../signal/statistics.ts';
import type { Course } from './course.ts';
import { usualLoad } from './rowStates.ts';

/** A load that comes and goes by itself: what climbs and resets, hiccups, drops and tries again. */
export interface Cycling {
  /** Rows of the course, from the first rise to the end of the last time on. */
  readonly first: number;
  readonly last: number;
  /** Rows at which it rose, ascending, three at least. */
  readonly rises: readonly number[];
}

/** On from here up, off from there down, as shares of the 95th percentile of power. */
const [ON_SHARE, OFF_SHARE] = [0.3, 0.1];
const LEAST_CYCLES = 3;
/** Where a phase is shorter than three rows, chance makes three alike too easily. */
const LEAST_BRIEF_CYCLES = 6;
/** A cycle is like the others within this share, or a row each way. */
const LIKE_SHARE = 0.2;
/** Slower ones are loads that somebody, or a thermostat, switches. Common practice, no source. */
const LONGEST_PERIOD_S = 900;

/**
 * Stretches on which a load comes and goes in cycles that are like each other.
 *
 * @param holes - as `holesIn` gives them: no stretch goes across one.
 */
export function cyclesIn(course: Course, holes: readonly number[]): readonly Cycling[] {
  const { load, partStarts } = course;
  const ends = [...partStarts.slice(1), ...holes.map((at) => at + 1), load.length].sort((a, b) => a - b);
  let from = 0;
  return ends.flatMap((end) => {
    const found = cyclesBetween(course, from, end);
    from = end;
    return found;
  });
}

interface Phase {
  readonly rise: number;
  readonly fall: number;
}

function cyclesBetween(course: Course, from: number, end: number): readonly Cycling[] {
  const phases = phasesOn(course, from, end);
  const { timesS } = course;
  const found: Cycling[] = [];
  for (let start = 0; start + LEAST_CYCLES < phases.length; ) {
    let next = start + 1;
    while (next + 1 < phases.length && isLike(timesS, phases, start, next)) next++;
    const own = phases.slice(start, next + 1);
    if (isCycling(timesS, own)) {
      const last = own.at(-1)!;
      const usualOn = median(own.slice(0, -1).map(({ rise, fall }) => fall - rise));
      const isWhole = last.fall - last.rise <= 1.5 * usualOn;
      found.push({
        first: footOf(course.load, own[0]!.rise, from),
        last: (isWhole ? last.fall : footOf(course.load, last.rise, from)) - 1,
        rises: own.map(({ rise }) => rise),
      });
      start = next + 1;
    } else start++;
  }
  return found;
}

/** The row at which a rise begins: from nothing it may climb slowly. */
function footOf(load: Float64Array, rise: number, from: number): number {
  let row = rise;
  while (row - 1 >= from && load[row - 1]! > 0 && load[row - 1]! < load[row]!) row--;
  return row;
}

/** Rows [rise, fall) in which the load is on. One that is on at either end of the stretch is no whole phase there. */
function phasesOn(course: Course, from: number, end: number): readonly Phase[] {
  const { load } = course;
  const usual = usualLoad(course, 1, from, end);
  if (usual === 0) return [];
  const phases: Phase[] = [];
  let rise = -1;
  let wasOff = false;
  for (let row = from; row < end; row++) {
    const size = load[row]!;
    if (size <= OFF_SHARE * usual) {
      if (rise >= 0) phases.push({ rise, fall: row });
      rise = -1;
      wasOff = true;
    } else if (size >= ON_SHARE * usual && wasOff && rise < 0) rise = row;
  }
  if (rise >= 0) phases.push({ rise, fall: end });
  return phases;
}

/** Whether the cycle that begins with phase `next` is as long as those from `start` on. */
function isLike(timesS: Float64Array, phases: readonly Phase[], start: number, next: number): boolean {
  const at = (index: number): number => timesS[phases[index]!.rise]!;
  const mean = (at(next) - at(start)) / (next - start);
  const period = at(next + 1) - at(next);
  const row = timesS[phases[next]!.rise + 1]! - at(next);
  return Math.abs(period - mean) <= Math.max(LIKE_SHARE * mean, 1.5 * row);
}

function isCycling(timesS: Float64Array, phases: readonly Phase[]): boolean {
  const cycles = phases.length - 1;
  if (cycles < LEAST_CYCLES) return false;
  const periodS = (timesS[phases.at(-1)!.rise]! - timesS[phases[0]!.rise]!) / cycles;
  if (periodS > LONGEST_PERIOD_S) return false;
  const on = median(phases.slice(0, -1).map(({ rise, fall }) => fall - rise));
  const off = median(phases.slice(1).map(({ rise }, i) => rise - phases[i]!.fall));
  return cycles >= (Math.min(on, off) < 3 ? LEAST_BRIEF_CYCLES : LEAST_CYCLES);
}
