/** What the numbers of a column say of it as an axis; looked at only where no header tells. */
export interface ColumnTrend {
  readonly countsUp: () => boolean;
  readonly risesEvenly: () => boolean;
  /** Whether it counts and starts anew whenever its counter is full. */
  readonly isCounter: () => boolean;
}

/** @param values - one a row, NaN where missing. */
export function columnTrend(values: Float64Array): ColumnTrend {
  return {
    countsUp: () => countsUp(values),
    risesEvenly: () => risesEvenly(values),
    isCounter: () => unwrapCount(values.slice(), []) !== null,
  };
}

/**
 * Whether a column numbers its rows: whole numbers, one more from each row to the next, missing ones aside. What starts
 * anew after some rows, as the number of a device does, numbers something else.
 *
 * @param values - shape N, NaN where missing.
 */
export function countsUp(values: Float64Array): boolean {
  let previous = Number.NaN;
  let start = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (!Number.isFinite(value)) continue;
    if (!Number.isInteger(value)) return false;
    // A restart is a new segment, not the end of counting.
    if (!Number.isNaN(previous) && value !== previous + 1) {
      if (value > 1 || i - start < LEAST_RUN) return false;
      start = i;
    }
    previous = value;
  }
  return !Number.isNaN(previous);
}

/** Rows of a record, at least, whose numbers start anew behind it. */
const LEAST_RUN = 8;

/** What the counters of devices hold: one byte or two. */
const COUNTER_SIZES = [2 ** 8, 2 ** 16];
/** Rows that may be lost where a counter starts anew. */
const MOST_LOST = 8;

/**
 * Makes a count that starts anew whenever its counter is full one that goes on: 254, 255, 0, 1 becomes 254, 255, 256, 257.
 *
 * Records one after the other start anew too. A counter is told from them by what it holds (a byte or two), or by a first
 * count that begins anywhere, and by values that go on across each new start as they do elsewhere.
 *
 * @param numbers - one a row, NaN where missing; changed in place.
 * @param values - the columns beside it.
 * @returns how many numbers the counter holds; null where it is none, and nothing is changed.
 */
export function unwrapCount(numbers: Float64Array, values: readonly Float64Array[]): number | null {
  const restarts = restartsOf(numbers);
  if (restarts === null || restarts.rows.length === 0) return null;
  const { rows, first, lowest, highest } = restarts;
  const size = highest - lowest + 1;
  // A record begins with its first number.
  if (!COUNTER_SIZES.includes(size) && first === lowest) return null;
  const starts = new Map(rows.map(({ row, before, after }) => [row, after + size - before]));
  const isFull = [...starts.values()].every((advance) => advance <= MOST_LOST);
  if (!isFull || !values.every((column) => goesOn(column, starts))) return null;
  let turns = 0;
  for (let row = 0; row < numbers.length; row++) {
    if (starts.has(row)) turns++;
    numbers[row]! += turns * size;
  }
  return size;
}

/** Where a count falls, and what it runs over; null where it is no count. */
function restartsOf(numbers: Float64Array): {
  readonly rows: readonly { readonly row: number; readonly before: number; readonly after: number }[];
  readonly first: number;
  readonly lowest: number;
  readonly highest: number;
} | null {
  const rows = [];
  let [first, previous, lowest, highest] = [Number.NaN, Number.NaN, Number.POSITIVE_INFINITY, 0];
  for (let row = 0; row < numbers.length; row++) {
    const number = numbers[row]!;
    if (Number.isNaN(number)) continue;
    if (!Number.isInteger(number) || number < 0) return null;
    if (number < previous) rows.push({ row, before: previous, after: number });
    if (Number.isNaN(first)) first = number;
    previous = number;
    lowest = Math.min(lowest, number);
    highest = Math.max(highest, number);
  }
  return Number.isNaN(first) ? null : { rows, first, lowest, highest };
}

/** Whether no step into the rows given, each so many numbers on, is larger than the largest elsewhere makes it. */
function goesOn(column: Float64Array, starts: ReadonlyMap<number, number>): boolean {
  let [within, across, previous] = [0, 0, Number.NaN];
  for (let row = 0; row < column.length; row++) {
    const step = Math.abs(column[row]! - previous);
    const advance = starts.get(row);
    if (advance === undefined) {
      if (step > within) within = step;
    } else if (step > across * advance) across = step / advance;
    previous = column[row]!;
  }
  return across <= within;
}

/** Of the rise: how far a column may stray from the straight line. */
const STRAY = 0.1;

/**
 * Whether a column looks like a time: never falls unless to start anew, ends above its start, and runs near a
 * straight line, which no wave does that was sampled for more than a cycle.
 *
 * @param values - NaN where missing.
 */
export function risesEvenly(values: Float64Array): boolean {
  const present = values.filter((value) => Number.isFinite(value));
  const runs = runsBetweenFalls(present);
  // Records pasted one under the other: each starts its time anew.
  return runs.length === 1 || runs.every((run) => run.length >= FEWEST_RISING)
    ? runs.every(isEvenRise)
    : false;
}

/** Rows of a record, at least, whose time starts anew behind it. */
const FEWEST_RISING = 16;

function runsBetweenFalls(values: Float64Array): Float64Array[] {
  const runs: Float64Array[] = [];
  let from = 0;
  for (let i = 1; i <= values.length; i++) {
    if (i < values.length && values[i]! >= values[i - 1]!) continue;
    runs.push(values.subarray(from, i));
    from = i;
  }
  return runs;
}

function isEvenRise(present: Float64Array): boolean {
  const start = present[0] ?? 0;
  const rise = (present.at(-1) ?? 0) - start;
  if (!(rise > 0)) return false;
  return present.every(
    (value, i) => Math.abs(value - start - (rise * i) / (present.length - 1)) <= STRAY * rise,
  );
}
