import { orderStatistic } from '../../signal/statistics.ts';
import type { Course } from './course.ts';

export type RowState = 'off' | 'idle' | 'discharge' | 'charge';

/** Below this share of the usual load a unit is taken to run for itself alone; of a charge: to keep itself full. */
const IDLE_SHARE: Readonly<Record<'discharge' | 'charge', number>> = { discharge: 0.1, charge: 0.02 };
/** From here up it is loaded, however it got there. */
const LOADED_SHARE = 0.3;
/** What a meter shows with nothing on it, of the usual load. Common practice, no source. */
const NOTHING_SHARE = 0.002;
/** A unit that takes over twenty hours to empty is not being tested for its capacity: power over rated energy, per hour. */
const IDLE_RATE = 0.05;

/**
 * What happens in each row: nothing, the unit by itself, a discharge or a charge.
 *
 * Nothing flows within two steps of the meter. A small power is idle where the load came down to it by a jump; what
 * falls slowly, as a charge does at its end, stays what it was.
 *
 * @param ratedWh - what the unit is rated at; absent: not told.
 * @returns shape N, as the course.
 */
export function rowStates(course: Course, ratedWh?: number): readonly RowState[] {
  const { load, loadStep, partStarts } = course;
  const usual = { discharge: usualLoad(course, 1), charge: usualLoad(course, -1) };
  const most = Math.max(usual.discharge, usual.charge);
  const nothing = Math.max(Math.min(2 * loadStep, 0.1 * most), NOTHING_SHARE * most);
  const isAllIdle =
    ratedWh !== undefined &&
    course.watts !== null &&
    course.modes === null &&
    usual.discharge < IDLE_RATE * ratedWh;
  const starts = new Set(partStarts);
  const states: RowState[] = [];
  let state: RowState = 'off';
  for (let row = 0; row < load.length; row++) {
    if (starts.has(row)) state = 'off';
    const direction = load[row]! < 0 ? 'charge' : 'discharge';
    const size = Math.abs(load[row]!);
    const isLoaded = (): boolean => {
      const share = size / usual[direction];
      if (share >= LOADED_SHARE) return true;
      const isSmall = share < IDLE_SHARE[direction];
      if (state === direction) return !isSmall || size >= 0.5 * largestOf(load, row - 3, row - 1);
      return !isSmall && (row === 0 || size > 2 * Math.abs(load[row - 1]!));
    };
    if (size <= nothing) state = 'off';
    else if (isAllIdle && direction === 'discharge') state = 'idle';
    else state = isLoaded() ? direction : 'idle';
    states.push(state);
  }
  return toldStates(course, states);
}

/** What the log tells by itself: a gauge's modes, which its coarse steps can't; an outlet that has volts is on. */
function toldStates({ from, modes, side, volts }: Course, states: readonly RowState[]): readonly RowState[] {
  if (from === 'counter' && modes !== null)
    return states.map((state, row) => {
      const mode = modes[row] ?? null;
      return mode === 'charge' || mode === 'discharge' ? mode : state === 'off' ? 'off' : 'idle';
    });
  if (from === 'counter') return withoutShortStops(states);
  if (side !== 'ac' || volts === null) return states;
  let most = 0;
  for (const value of volts) if (value > most) most = value;
  return states.map((state, row) => (state === 'off' && volts[row]! > most / 2 ? 'idle' : state));
}

/** A counter stands still between its steps: nothing flows only where it stands for longer than it is wont to. */
function withoutShortStops(states: readonly RowState[]): readonly RowState[] {
  const stops: { readonly from: number; readonly to: number }[] = [];
  for (let row = 1; row < states.length; row++) {
    if (states[row] !== 'off' || states[row - 1] === 'off') continue;
    let to = row;
    while (to < states.length && states[to] === 'off') to++;
    if (to < states.length) stops.push({ from: row, to });
  }
  if (stops.length === 0) return states;
  const lengths = Float64Array.from(stops, ({ from, to }) => to - from);
  const usual = orderStatistic(lengths, lengths.length >> 1);
  const filled = [...states];
  for (const { from, to } of stops) if (to - from <= 5 * usual) filled.fill(states[to]!, from, to);
  return filled;
}

function largestOf(load: Float64Array, from: number, to: number): number {
  let most = 0;
  for (let row = Math.max(0, from); row <= to; row++) most = Math.max(most, Math.abs(load[row]!));
  return most;
}

/** The 95th percentile of what flows one way, over the rows in which something does; 0: nothing does. */
export function usualLoad(
  { load, loadStep }: Pick<Course, 'load' | 'loadStep'>,
  sign: 1 | -1,
  from = 0,
  end: number = load.length,
): number {
  const above = (least: number): Float64Array => {
    const sizes = new Float64Array(end - from);
    let count = 0;
    for (let row = from; row < end; row++) if (sign * load[row]! > least) sizes[count++] = sign * load[row]!;
    return sizes.subarray(0, count);
  };
  const plain = above(2 * loadStep);
  const sizes = plain.length >= 3 ? plain : above(0);
  return sizes.length === 0 ? 0 : orderStatistic(sizes, Math.ceil(0.95 * sizes.length) - 1);
}
