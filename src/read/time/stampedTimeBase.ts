import { log2 } from '../../base/elementary.ts';
import type { MeasureError } from '../../base/measureError.ts';
import { readError } from '../readErrors.ts';
import type { ColumnDigits } from '../text/columnDigits.ts';
import { type GridKind, placeOnGrid, type TimeBase } from './arrangeSamples.ts';
import { roundedLine } from './roundedLine.ts';
import { isEven, largestDeviation, leastSquaresLine, lineThroughEnds } from './stampLine.ts';

/** Rows kept on change may be few: each can stand for this many samples. */
const KEPT_ROWS: GridKind = { leastSingle: 0, mostSamplesARow: 256 };
/** A stamp rounded to a tick strays by half of it; the fitted line adds a little. */
const TICK_WITHIN = 0.6;
/** Stamps cut towards zero stray by up to a whole tick where they change sign, which shows where they repeat. */
const CUT_TICK_WITHIN = 1.1;

/** Fewer different stamps than this say nothing of an interval. */
const LEAST_RISES = 8;

/**
 * The time base behind a column of stamps. Never from a first difference: the interval is that of the
 * whole stretch, since stamps may repeat, alternate or jitter in their last digits.
 *
 * @param stamps - one a row, never falling, in any unit; NaN where missing.
 * @param resolution - the last printed digit of the stamps, same unit.
 * @param lineOfRow - for the error's place.
 * @param keptOnChange - whether no row means that the values are as before.
 * @param digits - how the column prints its stamps; by default all with the last digit given.
 * @returns in the stamps' unit (read `S` as that).
 * @throws MeasureError `time.still` where the time doesn't move on, or in a few jumps only.
 */
export function stampedTimeBase(
  stamps: Float64Array,
  resolution: number,
  lineOfRow: (row: number) => number,
  keptOnChange = false,
  digits: ColumnDigits = { significant: Number.POSITIVE_INFINITY, finest: resolution, resolution },
): TimeBase {
  const line = lineThroughEnds(stamps);
  if (line === null || !(line.interval > 0)) throw standsStill(stamps, lineOfRow);
  if (isEven(stamps, line)) return asRead(stamps, line.start, line.interval, false);

  const steps = stampSteps(stamps);
  const rises = steps.count - steps.repeats;
  if (rises < LEAST_RISES)
    throw readError('time.still.coarse', { stamps: rises + 1, rows: stamps.length }, { line: lineOfRow(0) });
  const precisionTick = singlePrecisionTick(stamps, resolution);
  const digit = Math.max(resolution, precisionTick);
  const fitted = leastSquaresLine(stamps);
  const strays = largestDeviation(stamps, fitted);
  const isPrinted = strays <= (steps.repeats > rises / 2 ? CUT_TICK_WITHIN : TICK_WITHIN) * digit;
  const isTicked = strays <= TICK_WITHIN * steps.smallest && areMultiples(stamps, steps.smallest, resolution);
  // One or two double steps among even ones are missing rows; many, spread evenly, are the clock's ticks.
  const isHoled =
    steps.repeats === 0 &&
    steps.smallest > 0.9 * steps.median &&
    (line.interval / steps.median - 1) * steps.count < 2.5;
  const isBroken = isHoled || jumps(stamps, steps, fitted.interval);
  const rounded = isBroken ? null : roundedLine(stamps, digits, precisionTick);
  if (rounded !== null) {
    const { line, coarsest, intervalWithin } = rounded;
    const isCoarse = coarsest > line.interval / 2;
    const within = intervalWithin ?? (isCoarse ? lineWithin(stamps, line.interval, coarsest) : null);
    return asRead(stamps, line.start, line.interval, isCoarse, within);
  }
  if (keptOnChange) {
    const grid = placeOnGrid(stamps, steps.smallest, resolution, KEPT_ROWS);
    return grid === null ? resampled(stamps, steps.median) : held(grid);
  }
  if (!isBroken && (isPrinted || isTicked)) {
    const tick = isPrinted ? digit : steps.smallest;
    const isCoarse = tick > fitted.interval / 2;
    const within = isCoarse ? lineWithin(stamps, fitted.interval, tick) : null;
    return asRead(stamps, fitted.start, fitted.interval, isCoarse, within);
  }
  return placeOnGrid(stamps, steps.median, resolution) ?? resampled(stamps, steps.median);
}

/** A clock's ticks make odd steps all along; fewer than this are no ticks, but a time that jumps. */
const LEAST_ODD_STEPS = 3;
/** Of the interval: a jump that is larger is worth saying. */
const LEAST_JUMP = 0.2;

/** Whether a time that is fine enough to tell its steps goes evenly but for one or two of them. */
function jumps(stamps: Float64Array, { repeats, median }: StampSteps, interval: number): boolean {
  if (repeats > LEAST_ODD_STEPS || Math.abs(median / interval - 1) > LEAST_JUMP) return false;
  let odd = 0;
  let previous = Number.NaN;
  for (const stamp of stamps) {
    if (Number.isNaN(stamp)) continue;
    if (Math.abs(stamp - previous - median) > LEAST_JUMP * median) odd++;
    previous = stamp;
  }
  return odd > 0 && odd < LEAST_ODD_STEPS;
}

/** Whether every step is a whole number of ticks. */
function areMultiples(stamps: Float64Array, tick: number, resolution: number): boolean {
  const within = Math.max(0.1 * tick, resolution);
  let previous = stamps.find((stamp) => !Number.isNaN(stamp)) ?? 0;
  for (const stamp of stamps) {
    if (Number.isNaN(stamp)) continue;
    const step = stamp - previous;
    if (Math.abs(step - Math.round(step / tick) * tick) > within) return false;
    previous = stamp;
  }
  return true;
}

/**
 * Of a tick over the record: what a line through all stamps is off by. Of 2,000 records of 300 to 5,000 samples, ticks
 * of 0.6 to 40 intervals, the line of least squares was off by 0.16 at most and by 0.025 in one of twenty.
 */
const LINE_WITHIN = 0.05;

function lineWithin(stamps: Float64Array, interval: number, tick: number): number {
  return (LINE_WITHIN * tick) / (interval * stamps.length);
}

function asRead(
  stamps: Float64Array,
  start: number,
  interval: number,
  isCoarse: boolean,
  intervalWithin: number | null = null,
): TimeBase {
  return {
    startS: start,
    intervalS: interval,
    sampleCount: stamps.length,
    arrangement: { kind: 'as read' },
    isCoarse,
    ...(intervalWithin === null ? {} : { intervalWithin }),
  };
}

/** Places without a row take the row before: the file means that nothing changed. */
function held(grid: TimeBase): TimeBase {
  if (grid.arrangement.kind !== 'placed') return grid;
  let last = 0;
  const rowOfSample = grid.arrangement.rowOfSample.map((row) => {
    if (row >= 0) last = row;
    return last;
  });
  return { ...grid, arrangement: { kind: 'held', rowOfSample } };
}

function resampled(stamps: Float64Array, median: number): TimeBase {
  const present = stamps.filter((stamp) => !Number.isNaN(stamp));
  const startS = present[0]!;
  const offsetsS = present.map((stamp) => stamp - startS);
  const spanS = offsetsS.at(-1)!;
  // As fine as most rows are, but no more than four samples a row.
  const sampleCount = Math.min(Math.round(spanS / median), 4 * stamps.length) + 1;
  return {
    startS,
    intervalS: spanS / (sampleCount - 1),
    sampleCount,
    arrangement: { kind: 'resampled', offsetsS },
    isCoarse: false,
  };
}

function standsStill(stamps: Float64Array, lineOfRow: (row: number) => number): MeasureError {
  const stamp = stamps.find((one) => !Number.isNaN(one)) ?? null;
  return readError('time.still', { stamp }, { line: lineOfRow(0) });
}

/**
 * The step between neighbouring single-precision numbers at the largest stamp, where all stamps are such
 * numbers: a clock kept in single precision ticks in that step however many digits are printed.
 *
 * @param stamps - NaN where missing.
 * @param resolution - the last printed digit.
 * @returns 0 where the stamps aren't single-precision numbers.
 */
function singlePrecisionTick(stamps: Float64Array, resolution: number): number {
  let largest = 0;
  for (const stamp of stamps) {
    if (Number.isNaN(stamp)) continue;
    if (Math.abs(Math.fround(stamp) - stamp) > resolution) return 0;
    largest = Math.max(largest, Math.abs(stamp));
  }
  // 24 bits of precision, one of them before the point.
  return largest === 0 ? 0 : 2 ** (Math.floor(log2(largest)) - 23);
}

/** How the stamps go on from each row to the next that has one. */
interface StampSteps {
  readonly count: number;
  /** Steps of zero: the stamp repeats. */
  readonly repeats: number;
  /** Smallest and middle positive step; 0 where there is none. */
  readonly smallest: number;
  readonly median: number;
  readonly largest: number;
}

/** @param stamps - never falling, NaN where missing. */
export function stampSteps(stamps: Float64Array): StampSteps {
  const present = stamps.filter((stamp) => !Number.isNaN(stamp));
  const steps = present.subarray(1).map((stamp, i) => stamp - present[i]!);
  const rising = steps.filter((step) => step > 0).sort();
  return {
    count: steps.length,
    repeats: steps.length - rising.length,
    smallest: rising[0] ?? 0,
    median: rising[rising.length >> 1] ?? 0,
    largest: rising.at(-1) ?? 0,
  };
}
