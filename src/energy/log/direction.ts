import type { LogCounter, LogMode } from './energyLog.ts';

/** What a direction is told by. */
interface Witnesses {
  /** Of watts, or amperes. */
  readonly flow: Float64Array;
  readonly volts: Float64Array | null;
  readonly modes: readonly LogMode[] | null;
  readonly counters: readonly LogCounter[];
  readonly partStarts: readonly number[];
  readonly side: 'ac' | 'dc' | null;
}

/** Of the largest: less is no flow. */
const LOADED = 0.1;
/** Of the volts: a battery moves by more, full to empty. */
const LEAST_COURSE = 0.01;

/**
 * What a positive reading means: told by the log's own modes, by what is left in the battery, or by its volts, which
 * fall while it is discharged and rise while it is charged.
 *
 * @returns `unsigned` where the readings are of one sign in either mode, or nothing tells.
 */
export function positiveMeans(witnesses: Witnesses): 'charge' | 'discharge' | 'unsigned' {
  const { flow, modes, counters, side } = witnesses;
  const large = LOADED * largest(flow);
  if (modes !== null) return byModes(flow, modes, large);
  const left = counters.find(({ kind }) => kind === 'remaining');
  if (left !== undefined) return byLevel(flow, left.values, witnesses.partStarts, large, 0);
  return witnesses.volts === null || side === 'ac'
    ? 'unsigned'
    : byLevel(flow, witnesses.volts, witnesses.partStarts, large, LEAST_COURSE);
}

function byModes(
  flow: Float64Array,
  modes: readonly LogMode[],
  large: number,
): 'charge' | 'discharge' | 'unsigned' {
  let [charge, discharge] = [0, 0];
  for (let row = 0; row < flow.length; row++) {
    if (!(Math.abs(flow[row]!) > large)) continue;
    if (modes[row] === 'charge') charge += Math.sign(flow[row]!);
    if (modes[row] === 'discharge') discharge += Math.sign(flow[row]!);
  }
  if (charge * discharge > 0) return 'unsigned';
  if (charge === 0 && discharge === 0) return 'unsigned';
  // With one of the two modes alone its sign says it.
  return charge > 0 || discharge < 0 ? 'charge' : 'discharge';
}

/** By a level of the battery: how it moves while readings of one sign last. */
function byLevel(
  flow: Float64Array,
  level: Float64Array,
  partStarts: readonly number[],
  large: number,
  leastShare: number,
): 'charge' | 'discharge' | 'unsigned' {
  const starts = new Set(partStarts);
  let course = 0;
  let size = 0;
  let runSign = 0;
  let runFrom = 0;
  const endRun = (to: number): void => {
    if (runSign === 0 || to - runFrom <= 2) return;
    // A run's first reading still has the step of the load in it; single ones are noise.
    const share = Math.max(1, Math.floor((to - runFrom) / 10));
    const first = mean(level.subarray(runFrom + 1, runFrom + 1 + share));
    const last = mean(level.subarray(to - share, to));
    if (!Number.isNaN(last - first)) {
      course += runSign * (last - first);
      size = Math.max(size, Math.abs(first));
    }
  };
  for (let row = 0; row < flow.length; row++) {
    const sign = Math.abs(flow[row]!) > large ? Math.sign(flow[row]!) : 0;
    if (sign === runSign && !starts.has(row)) continue;
    endRun(row);
    runSign = sign;
    runFrom = row;
  }
  endRun(flow.length);
  if (Math.abs(course) <= leastShare * size) return 'unsigned';
  return course > 0 ? 'charge' : 'discharge';
}

function mean(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function largest(values: Float64Array): number {
  let most = 0;
  for (const value of values) if (Math.abs(value) > most) most = Math.abs(value);
  return most;
}
