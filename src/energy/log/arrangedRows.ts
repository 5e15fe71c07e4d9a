import type { FoundClock } from './clock.ts';
import type { FileColumn } from './fileColumns.ts';
import { longLayout, rowsOfMain, wideRows } from './longRows.ts';
import { nothingFound } from './nothingFound.ts';
import { stampedRows } from './placeRows.ts';
import { namedFlows, type ToldColumns, toldColumn } from './readings.ts';

interface ArrangedRows {
  readonly stampsS: Float64Array;
  readonly columns: readonly FileColumn[];
  /** All that the file holds, those that are not read among them. */
  readonly all: readonly FileColumn[];
  readonly long: ReturnType<typeof longLayout>;
  /** Rows of the file; null: all, in their order. */
  readonly sources: Int32Array | null;
}

/** Rows that have a stamp; of a long log, those of the metric that counts, with the others beside it. */
export function arrangedRows(
  clock: FoundClock,
  columns: readonly FileColumn[],
  told: ToldColumns,
): ArrangedRows {
  const long = longLayout(columns, clock.columns);
  if (long === null) {
    const rows = stampedRows(clock.stampsS);
    const kept = rows === null ? columns : columns.map((column) => takenRows(column, rows));
    return { stampsS: taken(clock.stampsS, rows), columns: kept, all: kept, long, sources: rows };
  }
  const wide = wideRows(long, clock.stampsS);
  const { flows } = namedFlows(wide.columns, told);
  const wanted = told.counter === undefined ? null : toldColumn(wide.columns, 'counter', told.counter).column;
  const main =
    (flows.power ?? flows.amps)?.column ??
    wanted ??
    wide.columns.find(({ name }) => name.quantity === 'energy');
  if (main === undefined) throw nothingFound(wide.columns, flows, true, false);
  const { rows, held } = rowsOfMain(main.numbers!, wide.stampsS);
  const chosen = [flows.power, flows.volts, flows.amps].flatMap((one) => (one === null ? [] : [one.column]));
  const isRead = (column: FileColumn): boolean =>
    chosen.includes(column) || !['power', 'voltage', 'current'].includes(column.name.quantity ?? '');
  return {
    stampsS: taken(wide.stampsS, rows),
    columns: wide.columns.filter(isRead).map((column) => ({
      ...column,
      numbers: taken(column === main ? column.numbers! : held(column.numbers!), rows),
    })),
    all: wide.columns,
    long,
    sources: rows.map((row) => wide.sources[row]!),
  };
}

function taken(values: Float64Array, rows: Int32Array | null): Float64Array {
  return rows === null ? values : Float64Array.from(rows, (row) => values[row]!);
}

function takenRows(column: FileColumn, rows: Int32Array): FileColumn {
  const { numbers, words } = column;
  return {
    ...column,
    numbers: numbers === null ? null : taken(numbers, rows),
    words: words === null ? null : { ...words, codes: Uint16Array.from(rows, (row) => words.codes[row]!) },
  };
}

export function firstRows(column: FileColumn, count: number): FileColumn {
  const { numbers, words, stamps } = column;
  const cut = (values: Float64Array): Float64Array => values.subarray(0, count);
  return {
    ...column,
    numbers: numbers === null ? null : cut(numbers),
    words: words === null ? null : { ...words, codes: words.codes.subarray(0, count) },
    stamps:
      stamps === null
        ? null
        : {
            ...stamps,
            dayMonth: cut(stamps.dayMonth),
            monthDay: cut(stamps.monthDay),
            seconds: cut(stamps.seconds),
          },
  };
}

/** Of tests side by side, each with a time of the same name, that which stands left of the column told. */
export function ofBlock(columns: readonly FileColumn[], told: ToldColumns): readonly FileColumn[] {
  const [key, wanted] = (['power', 'volts', 'amps', 'counter'] as const)
    .map((one) => [one, told[one]] as const)
    .find(([, name]) => name !== undefined) ?? ['power', undefined];
  if (wanted === undefined) return columns;
  const isTime = ({ name }: FileColumn): boolean => name.quantity === 'time' && name.full !== '';
  const times = columns.filter(isTime).map(({ name }) => name.full);
  if (new Set(times).size === times.length) return columns;
  const at = toldColumn(columns, key, wanted).column.index;
  return columns.filter(
    (column) =>
      !isTime(column) ||
      !columns.some(
        (other) =>
          isTime(other) &&
          other.name.full === column.name.full &&
          other.index < at &&
          (column.index > at || other.index > column.index),
      ),
  );
}
