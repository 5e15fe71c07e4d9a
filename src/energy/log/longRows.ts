import { median } from '../../signal/statistics.ts';
import type { LogQuantity } from './energyLog.ts';
import type { FileColumn } from './fileColumns.ts';
import { type LogName, logName } from './logNames.ts';
import { logUnit } from './logUnits.ts';

/** A log of which each row holds the name of a metric and one value. */
export interface LongLayout {
  readonly metric: FileColumn;
  readonly value: FileColumn;
  /** What each of the metric's words names. */
  readonly names: readonly LogName[];
}

/** The same log with a column for each metric; NaN where a row has none of it. */
interface WideRows {
  readonly stampsS: Float64Array;
  readonly columns: readonly FileColumn[];
  /** The row of the file that each row comes from, the first of them. */
  readonly sources: Int32Array;
}

const MOST_METRICS = 200;
const READ: ReadonlySet<LogQuantity | null> = new Set([
  ...(['power', 'voltage', 'current', 'energy', 'charge'] as const),
  ...(['power factor', 'frequency'] as const),
]);
const VALUE_NAME = /^(value|values|reading|state|val|wert|valeur|valor|measure(ment)?|data|result)\b/i;

/**
 * Whether a log is long: a column of words that name quantities, or that is called a metric, and beside it one of
 * values.
 *
 * @param clock - columns that the clock is made of.
 */
export function longLayout(columns: readonly FileColumn[], clock: readonly FileColumn[]): LongLayout | null {
  const numbers = columns.filter(
    (column) => column.numbers !== null && !column.countsUp && !clock.includes(column),
  );
  const value =
    numbers.find(({ name }) => VALUE_NAME.test(name.full)) ?? (numbers.length === 1 ? numbers[0] : undefined);
  // A column of numbers that its name tells needs no metric.
  if (value === undefined || (READ.has(value.name.quantity) && !VALUE_NAME.test(value.name.full)))
    return null;
  const unitOf = unitColumn(columns);
  const candidates = columns.flatMap((metric) => {
    const texts = metric.words?.texts;
    if (texts === undefined || texts.length > MOST_METRICS) return [];
    const names = texts.map((text, code) => withUnit(logName(text), unitOf?.(metric, code) ?? null));
    const share = names.filter(({ quantity }) => READ.has(quantity)).length / texts.length;
    return share > 0 ? [{ metric, value, names, share }] : [];
  });
  const isCalled = ({ metric }: LongLayout): number => (metric.name.quantity === 'metric' ? 1 : 0);
  const [best] = candidates.sort((a, b) => isCalled(b) - isCalled(a) || b.share - a.share);
  return best ?? null;
}

/** The unit that a column of its own gives beside each metric. */
function unitColumn(columns: readonly FileColumn[]): ((metric: FileColumn, code: number) => string) | null {
  const units = columns.find(({ words }) =>
    words?.texts.some((text) => text.length < 6 && logUnit(text) !== null),
  );
  if (!units?.words) return null;
  const { codes, texts } = units.words;
  return (metric, code) =>
    metric === units ? '' : (texts[codes[metric.words!.codes.indexOf(code)] ?? -1] ?? '');
}

function withUnit(name: LogName, text: string | null): LogName {
  const unit = text === null || name.unit !== null ? null : logUnit(text);
  return unit === null ? name : { ...name, unit, quantity: unit.quantity };
}

/**
 * Gives each metric a column. Rows of one stamp become one row, where they are of different metrics. Where the
 * metrics stand one behind the other they are laid beside each other by time.
 */
export function wideRows({ metric, value, names }: LongLayout, stampsS: Float64Array): WideRows {
  const { codes } = metric.words!;
  const order = byTime(stampsS, codes);
  const kept = names.map(({ quantity }) => READ.has(quantity));
  const rowOf = new Int32Array(order.length);
  const sources: number[] = [];
  const seen = new Map<number, number>();
  let rows = 0;
  for (const source of order) {
    const code = codes[source]!;
    if (!kept[code] || Number.isNaN(stampsS[source]!)) continue;
    const isNext =
      rows === 0 || stampsS[source] !== stampsS[sources[rows - 1]!] || seen.get(code) === rows - 1;
    if (isNext) {
      sources.push(source);
      rows++;
    }
    seen.set(code, rows - 1);
    rowOf[source] = rows - 1;
  }
  const filled = names.map((_, code) => (kept[code] ? new Float64Array(rows).fill(Number.NaN) : null));
  for (let source = 0; source < codes.length; source++) {
    const column = filled[codes[source]!]!;
    if (column !== null && !Number.isNaN(stampsS[source]!)) column[rowOf[source]!] = value.numbers![source]!;
  }
  return {
    stampsS: Float64Array.from(sources, (source) => stampsS[source]!),
    sources: Int32Array.from(sources),
    columns: filled.flatMap((numbers, code): FileColumn[] => {
      const name = names[code]!;
      if (numbers === null) return [];
      const { index, decimals } = value;
      return [
        { index, name, shown: name.full, numbers, decimals, stamps: null, words: null, countsUp: false },
      ];
    }),
  };
}

/** Rows by their time, where the time of each metric rises and only that of all together falls. */
function byTime(stampsS: Float64Array, codes: Uint16Array): Int32Array {
  const order = Int32Array.from(stampsS.keys());
  const last = new Map<number, number>();
  let falls = 0;
  let ownFalls = 0;
  for (let row = 0; row < stampsS.length; row++) {
    if (stampsS[row]! < stampsS[row - 1]!) falls++;
    if (stampsS[row]! < (last.get(codes[row]!) ?? Number.NEGATIVE_INFINITY)) ownFalls++;
    last.set(codes[row]!, stampsS[row]!);
  }
  // The sort keeps the order of equal stamps.
  return falls > 0 && ownFalls === 0 ? order.sort((a, b) => stampsS[a]! - stampsS[b]!) : order;
}

/** Of a metric's usual step: an older reading is none any more. */
const STALE_STEPS = 2.5;

/**
 * The rows in which the metric that counts has a reading, with the others as they were last read.
 *
 * @param main - its readings.
 * @returns rows, ascending, and what fills another column's gaps in them.
 */
export function rowsOfMain(
  main: Float64Array,
  stampsS: Float64Array,
): { readonly rows: Int32Array; readonly held: (numbers: Float64Array) => Float64Array } {
  const rows = Int32Array.from([...main.keys()].filter((row) => !Number.isNaN(main[row]!)));
  return {
    rows,
    held: (numbers) => {
      const stale = STALE_STEPS * usualStep(numbers, stampsS);
      const filled = new Float64Array(numbers.length).fill(Number.NaN);
      let last = -1;
      for (let row = 0; row < numbers.length; row++) {
        if (!Number.isNaN(numbers[row]!)) last = row;
        if (last >= 0 && stampsS[row]! - stampsS[last]! <= stale) filled[row] = numbers[last]!;
      }
      return filled;
    },
  };
}

function usualStep(numbers: Float64Array, stampsS: Float64Array): number {
  const own = stampsS.filter((_, row) => !Number.isNaN(numbers[row]!));
  const steps = own
    .subarray(1)
    .map((stamp, i) => stamp - own[i]!)
    .filter((step) => step > 0);
  return steps.length === 0 ? 0 : median(steps);
}
