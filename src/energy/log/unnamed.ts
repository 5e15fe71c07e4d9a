import { median, orderStatistic } from '../../signal/statistics.ts';
import type { Course } from './counters.ts';
import { counterShape, countsFlow, throughput } from './counters.ts';
import type { FileColumn } from './fileColumns.ts';
import type { Flows, Reading } from './readings.ts';
import { isPlainProduct, productRatio } from './readings.ts';

/** What columns without names are found to be. */
export interface UnnamedColumns {
  readonly flows: Flows;
  readonly counter: FileColumn | null;
}

/** Columns looked at: their triples are tried. */
const MOST_COLUMNS = 8;
/** Of the plateau: a charger holds what it regulates so well. */
const HELD_WITHIN = 0.02;
const HELD_SHARE = 0.6;
const VOLTS_RISE = 0.03;

/**
 * Columns that no name tells apart, told by what they are to each other: one that is the product of two others; one
 * that a counter counts while volts rise under a current, or a power, that is held.
 *
 * @returns null where they tell nothing.
 */
export function unnamedColumns(columns: readonly FileColumn[], course: Course): UnnamedColumns | null {
  const moving = columns
    .filter(({ numbers, countsUp }) => numbers !== null && !countsUp && moves(numbers))
    .slice(0, MOST_COLUMNS);
  return byProduct(moving) ?? byCounter(moving, course);
}

function moves(numbers: Float64Array): boolean {
  return numbers.some((number) => number !== numbers[0] && !Number.isNaN(number));
}

function byProduct(columns: readonly FileColumn[]): UnnamedColumns | null {
  const found: Flows[] = [];
  for (const power of columns) {
    for (const [i, a] of columns.entries()) {
      for (const b of columns.slice(i + 1)) {
        if (power === a || power === b) continue;
        if (!isPlainProduct(productRatio(a.numbers!, b.numbers!, power.numbers!))) continue;
        const amps = [a, b].find((one) => rests(one.numbers!));
        const volts = amps === a ? b : a;
        // With the power known, volts and amperes that can't be told apart are left out.
        found.push(
          amps === undefined || rests(volts.numbers!)
            ? { power: reading(power), volts: null, amps: null }
            : { power: reading(power), volts: reading(volts), amps: reading(amps) },
        );
      }
    }
  }
  return found.length === 1 ? { flows: found[0]!, counter: null } : null;
}

function byCounter(columns: readonly FileColumn[], course: Course): UnnamedColumns | null {
  const found: UnnamedColumns[] = [];
  for (const counter of columns) {
    const shape = counterShape(counter.numbers!);
    if (shape === null || shape.kind !== 'cumulative') continue;
    for (const amps of columns) {
      if (amps === counter || !countsFlow(shape.rise, throughput(course, amps.numbers!))) continue;
      // Volts are as steady as nothing else, and printed as large as the current is: all in one small unit.
      const volts = columns.filter(
        (column) =>
          column !== counter &&
          column !== amps &&
          spread(column.numbers!) < spread(amps.numbers!) &&
          isLikeSized(column.numbers!, amps.numbers!) &&
          isCharging(amps.numbers!, column.numbers!),
      );
      if (volts.length === 1)
        found.push({ flows: { power: null, volts: reading(volts[0]!), amps: reading(amps) }, counter });
    }
  }
  return found.length === 1 ? found[0]! : null;
}

function reading(column: FileColumn): Reading {
  return { column, unit: null };
}

/** Of the largest: at rest there is hardly a current, and volts stay. */
const AT_REST = 0.02;

function rests(numbers: Float64Array): boolean {
  let [least, most] = [Number.POSITIVE_INFINITY, 0];
  for (const number of numbers) {
    least = Math.min(least, Math.abs(number));
    most = Math.max(most, Math.abs(number));
  }
  return least <= AT_REST * most;
}

/** Of the largest: how far the middle nine tenths reach. */
function spread(numbers: Float64Array): number {
  const present = numbers.filter((number) => !Number.isNaN(number));
  const [low, high] = [0.05, 0.95].map((share) =>
    orderStatistic(present, Math.floor(share * present.length)),
  ) as [number, number];
  return high === 0 ? Number.POSITIVE_INFINITY : (high - low) / Math.abs(high);
}

function isLikeSized(volts: Float64Array, amps: Float64Array): boolean {
  const ratio = middle(volts) / middle(amps);
  return ratio > 0.1 && ratio < 1000;
}

function middle(numbers: Float64Array): number {
  return median(numbers.filter((number) => !Number.isNaN(number)));
}

/**
 * Whether the flow is a current and no power: a charger holds its current, or its power, while the volts rise. Were the
 * column a power, its quotient by the volts would be the current that is held.
 */
function isCharging(flow: Float64Array, volts: Float64Array): boolean {
  const held = (values: Float64Array): boolean => isHeldWhileRising(values, volts);
  const isCurrent = held(flow) || held(flow.map((value, row) => value * volts[row]!));
  return isCurrent && !held(flow.map((value, row) => value / volts[row]!));
}

/** Whether most values lie within 2 % of their middle while the volts rise by 3 %: dips and a taper apart. */
function isHeldWhileRising(values: Float64Array, volts: Float64Array): boolean {
  const level = middle(values);
  const isHeld = (value: number): boolean => Math.abs(value / level - 1) <= HELD_WITHIN;
  const first = values.findIndex(isHeld);
  const last = values.findLastIndex(isHeld);
  const share = values.filter(isHeld).length / values.length;
  return share >= HELD_SHARE && volts[last]! / volts[first]! - 1 >= VOLTS_RISE;
}
