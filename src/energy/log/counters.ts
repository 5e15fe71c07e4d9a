import { decimalExponent } from '../../base/elementary.ts';
import type { LogCounter } from './energyLog.ts';
import type { FileColumn } from './fileColumns.ts';
import { sizeOf } from './flowUnits.ts';
import { logError } from './logErrors.ts';
import { type LogUnit, scaledUnit } from './logUnits.ts';
import type { LogNotice } from './notices.ts';
import { readingStep } from './readingStep.ts';
import { isPlainProduct, type ToldColumns, thousandsOf, toldColumn } from './readings.ts';

/** What counters are held against: the course of power and current, where the log has them. */
export interface Course {
  readonly timesS: Float64Array;
  readonly partStarts: readonly number[];
  /** In W and A. */
  readonly watts: Float64Array | null;
  readonly amps: Float64Array | null;
}

export interface FoundCounter extends LogCounter {
  readonly column: FileColumn;
  readonly unit: LogUnit;
}

const ALL_UNITS = ['Wh', 'mWh', 'µWh', 'Ah', 'mAh', 'µAh'];

/**
 * The columns that count energy or charge, with their kind, by how they go and by their name.
 *
 * @param isNeeded - whether the log has nothing else that an energy can be made of.
 * @throws MeasureError `log.unit` where a counter is needed and nobody says what it counts;
 * `log.column.unknown`, `log.column.choose` for the one told.
 */
export function findCounters(
  columns: readonly FileColumn[],
  course: Course,
  told: ToldColumns,
  isNeeded: boolean,
): { readonly counters: readonly FoundCounter[]; readonly notices: readonly LogNotice[] } {
  const notices: LogNotice[] = [];
  const wanted = told.counter === undefined ? null : toldColumn(columns, 'counter', told.counter);
  const candidates =
    wanted === null
      ? columns.filter(({ name }) => name.quantity === 'energy' || name.quantity === 'charge')
      : [wanted.column];
  const counters = candidates.flatMap((column): FoundCounter[] => {
    const { numbers, name } = column;
    if (numbers === null) return [];
    const shape = counterShape(numbers, name.isRemaining);
    if (shape === null) return [];
    const own = name.unit?.quantity === 'energy' || name.unit?.quantity === 'charge' ? name.unit : null;
    const unit = wanted?.unit ?? own ?? unitByCourse(shape.rise, course, name.quantity);
    if (unit === null || (unit.quantity !== 'energy' && unit.quantity !== 'charge')) {
      if (isNeeded || wanted !== null) throw unknownCounter(column);
      notices.push({ code: 'counter.unknown', column: column.shown });
      return [];
    }
    const factor = shape.sign === 'negative' ? -unit.factor : unit.factor;
    const counted = shape.sign === 'either' ? numbers.map(Math.abs) : numbers;
    return [
      {
        ...{ column, unit, name: column.shown, quantity: unit.quantity },
        kind: shape.kind === 'remaining' && isOfInterval(numbers, unit, course) ? 'per interval' : shape.kind,
        values: factor === 1 ? counted : counted.map((number) => number * factor),
        step: unit.factor * readingStep(numbers, column.decimals),
      },
    ];
  });
  const energies = counters.filter(({ quantity }) => quantity === 'energy');
  if (isNeeded && energies.length > 1)
    throw logError('log.column.choose', { key: 'counter', columns: energies.map(({ name }) => name) });
  return { counters, notices };
}

/** A counter of which nobody says what it counts. */
export function unknownCounter({ shown, numbers }: FileColumn): Error {
  return logError('log.unit', { key: 'counter', column: shown, most: sizeOf(numbers), units: ALL_UNITS });
}

/** Whether the numbers, all together, are what flowed: each is that of its interval. */
function isOfInterval(numbers: Float64Array, unit: LogUnit, course: Course): boolean {
  const flow = unit.quantity === 'energy' ? course.watts : course.amps;
  if (flow === null) return false;
  let sum = 0;
  for (const number of numbers) if (!Number.isNaN(number)) sum += Math.abs(number);
  return Math.abs((sum * unit.factor) / throughput(course, flow) - 1) <= 0.1;
}

interface CounterShape {
  readonly kind: LogCounter['kind'];
  /** All that it rises, in its own numbers; of one per interval, its sum. */
  readonly rise: number;
  readonly most: number;
  /** `negative`: counts down from zero; `either`: now up and now down, each time from zero. */
  readonly sign: 'positive' | 'negative' | 'either';
}

/** Of the value before: a counter that falls below it has started anew. */
const ANEW = 0.1;
/** Of the largest. */
const NOTHING = 0.005;
/** Rows in which the size of a battery, as its gauge has it, is set anew, and by how much of it. */
const SELDOM = 0.02;
const LITTLE = 0.05;
/** Of its steps: what turns so seldom goes up and down with a battery. */
const SELDOM_TURNS = 0.1;
/** Of its range: what goes in steps smaller than that is a level that rises and falls. */
const SMOOTH_STEP = 0.02;

/**
 * How a column of energy or charge goes; null where it hardly moves, as the size of a battery does.
 *
 * @remarks A counter that starts anew with each charge and discharge, and counts one of them below zero, is taken by
 * its size.
 */
export function counterShape(numbers: Float64Array, isRemaining = false): CounterShape | null {
  const plain = shapeOf(numbers, isRemaining);
  if (plain === null || plain.kind === 'cumulative' || !numbers.some((number) => number < 0)) return plain;
  const bySize = shapeOf(numbers.map(Math.abs), isRemaining);
  return bySize?.kind === 'cumulative' ? { ...bySize, sign: 'either' } : plain;
}

function shapeOf(numbers: Float64Array, isRemaining: boolean): CounterShape | null {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let row = 0; row < numbers.length; row++) {
    if (numbers[row]! < least) least = numbers[row]!;
    if (numbers[row]! > most) most = numbers[row]!;
  }
  const range = most - least;
  const size = Math.max(Math.abs(least), Math.abs(most));
  let [rises, falls, restarts, turns, rise, fall, sum, count] = [0, 0, 0, 0, 0, 0, 0, 0];
  let wentUp: boolean | null = null;
  let first = Number.NaN;
  let previous = Number.NaN;
  for (let row = 0; row < numbers.length; row++) {
    const number = numbers[row]!;
    if (Number.isNaN(number)) continue;
    sum += number;
    if (count++ === 0) first = number;
    else if (number !== previous) {
      const isUp = number > previous;
      if (wentUp !== null && wentUp !== isUp) turns++;
      wentUp = isUp;
      if (isUp) {
        rises++;
        rise += number - previous;
      } else if (previous > 0 && Math.abs(number) <= Math.max(ANEW * previous, NOTHING * size)) restarts++;
      else {
        falls++;
        fall += previous - number;
      }
    }
    previous = number;
  }
  // It stays, or is set anew now and then by hardly anything.
  const isSeldom = rises + falls + restarts <= Math.max(2, SELDOM * count);
  if (!(range > 0) || (isSeldom && range < LITTLE * size && count > 20)) return null;
  const shape = { rise, most: size, sign: 'positive' } as const;
  if (falls === 0) return { ...shape, kind: isRemaining && restarts === 0 ? 'remaining' : 'cumulative' };
  if (rises === 0 && restarts === 0)
    return first <= 0 && !isRemaining
      ? { ...shape, kind: 'cumulative', rise: fall, sign: 'negative' }
      : { ...shape, kind: 'remaining' };
  const steps = Math.max(1, count - 1);
  const isSmooth = (rise + fall) / steps <= SMOOTH_STEP * range || turns <= SELDOM_TURNS * steps;
  return isRemaining || isSmooth
    ? { ...shape, kind: 'remaining' }
    : { ...shape, kind: 'per interval', rise: sum };
}

/** The unit under which a counter rises as power or current say, to a power of a thousand. */
function unitByCourse(rise: number, course: Course, named: FileColumn['name']['quantity']): LogUnit | null {
  const quantities = (['energy', 'charge'] as const).filter(
    (quantity) => named !== 'energy' || quantity === 'energy',
  );
  const fitting = quantities.flatMap((quantity) => {
    const flow = quantity === 'energy' ? course.watts : course.amps;
    if (flow === null) return [];
    const ratio = rise / throughput(course, flow);
    if (!(ratio > 0) || ratio === Number.POSITIVE_INFINITY) return [];
    const thousands = thousandsOf(ratio);
    // The counter's own error, and what a log's raster misses.
    return Math.abs(ratio / thousands - 1) <= 0.1 ? [scaledUnit(quantity, 1 / thousands)] : [];
  });
  return fitting.length === 1 ? fitting[0]! : null;
}

/** All that flows, either way, in Wh or Ah. */
export function throughput({ timesS, partStarts }: Course, flow: Float64Array): number {
  const starts = new Set(partStarts);
  let sum = 0;
  let before = -1;
  for (let row = 0; row < flow.length; row++) {
    if (starts.has(row)) before = -1;
    if (Number.isNaN(flow[row]!)) continue;
    if (before >= 0)
      sum += (Math.abs(flow[row]!) + Math.abs(flow[before]!)) * (timesS[row]! - timesS[before]!);
    before = row;
  }
  return sum / 7200;
}

/** Whether a counter rises by what flows, but for a power of ten. */
export function countsFlow(rise: number, through: number): boolean {
  if (!(rise > 0) || !(through > 0)) return false;
  const ratio = rise / through;
  return (
    isPlainProduct(ratio) ||
    Math.abs(ratio / Number(`1e${decimalExponent(ratio * Math.sqrt(10))}`) - 1) <= 0.02
  );
}
