import { readSettings } from '../../read/head/settings.ts';
import { timeSettings } from '../../read/head/timeSettings.ts';
import { readError } from '../../read/readErrors.ts';
import { endsInCutRow } from '../../read/table/rowWidths.ts';
import { decodeText } from '../../read/text/decodeText.ts';
import { cleanText } from '../../read/text/textAccess.ts';
import { clockLayout, type FoundClock, findClock, noClock, startTimeOf } from './clock.ts';
import { counterShape, findCounters, unknownCounter } from './counters.ts';
import type { TimeOrder } from './dayOrder.ts';
import { positiveMeans } from './direction.ts';
import type { EnergyLog, LogColumn, LogQuantity, NamedColumn } from './energyLog.ts';
import { type FileColumn, fileColumns } from './fileColumns.ts';
import { type FlowUnits, flowUnits, sizeOf } from './flowUnits.ts';
import { cellKind } from './logCells.ts';
import { logError } from './logErrors.ts';
import { type LogTable, locateLog } from './logTable.ts';
import type { LogUnit } from './logUnits.ts';
import { longLayout, rowsOfMain, wideRows } from './longRows.ts';
import { findModes } from './modes.ts';
import type { LogNotice } from './notices.ts';
import { placeRows, stampedRows } from './placeRows.ts';
import { readingStep } from './readingStep.ts';
import { type Flows, namedFlows, type Reading, type ToldColumns, toldColumn } from './readings.ts';
import { samplingOf } from './sampling.ts';
import { type LogRows, scanLog } from './scanLog.ts';
import { findTotals } from './totals.ts';
import { unnamedColumns } from './unnamed.ts';

/** What a person tells of a log: columns by name, by `column 3` or by 3, perhaps with a unit: `Power=mW`. */
export interface EnergyLogOptions extends ToldColumns {
  readonly timeOrder?: TimeOrder;
}

const LEAST_ROWS = 3;
const MOST_MALFORMED_SHARE = 0.05;
/** Of a row to the next: what is faster shows the course of a wave, and belongs to another measurement. */
const SHORTEST_STEP_S = 0.02;

/**
 * Reads a slow log of volts, amperes, watts or a counter, whatever its layout: text, table, rows, clock, columns with
 * their units, counters, direction. Nothing is guessed that the energy depends on: it is asked for.
 *
 * @param bytes - the whole file. Not changed.
 * @throws MeasureError where it can't be read: `file.empty`, `file.foreign`, `file.binary`, `rows.none`,
 * `rows.malformed`, `columns.many`, `log.rows`, `log.time`; `log.capture` where it is a waveform; and where something
 * must be told: `log.column`, `log.quantity`, `log.unit`, `log.side`, `log.time.order`.
 */
export function readEnergyLog(bytes: Uint8Array, options: EnergyLogOptions = {}): EnergyLog {
  const text = withLineFeeds(decodeText(bytes).text);
  const table = locateLog(text);
  const scanned = scanLog(text, table);
  const { notices: rowNotices, rowCount } = checkedRows(text, table, scanned);
  const allColumns = fileColumns(table, scanned).map((column) => firstRows(column, rowCount));
  const clock =
    findClock(ofBlock(allColumns, options), options.timeOrder) ?? countedRows(table, allColumns, rowCount);
  const others = allColumns.filter((column) => !clock.columns.includes(column));
  const record = arrangedRows(clock, others, options);
  const { stampsS, columns, long } = record;
  const lineOfRow = (row: number): number =>
    scanned.lineOfRow(record.sources === null ? row : record.sources[row]!);
  if (stampsS.length < LEAST_ROWS) throw logError('log.rows', { rows: stampsS.length, least: LEAST_ROWS });

  const placed = placeRows(stampsS, clock, lineOfRow);
  const { timesS, partStarts } = placed;
  const stepS = medianStep(timesS);
  if (stepS < SHORTEST_STEP_S && clock.stepS < SHORTEST_STEP_S)
    throw logError('log.capture', { rows: timesS.length, stepS });

  const modes = findModes(columns);
  const isNamed = table.names !== null || long !== null;
  const place = { timesS, partStarts, watts: null, amps: null };
  const { flows, notices: flowNotices, counter } = foundFlows(columns, options, isNamed, place);
  const { units, notices: unitNotices } = flowUnits(flows);
  const [volts, amps, watts] = [
    flowColumn(flows.volts, units.volts),
    flowColumn(flows.amps, units.amps),
    flowColumn(flows.power, units.power),
  ];
  const hasFlow = watts !== null || (volts !== null && amps !== null);
  const course = {
    timesS,
    partStarts,
    watts: watts?.values ?? product(volts, amps),
    amps: amps?.values ?? null,
  };
  const taken = [flows.power, flows.volts, flows.amps].flatMap((one) => (one === null ? [] : [one.column]));
  const free = columns.filter((column) => !taken.includes(column));
  const counterColumns =
    counter === null ? free : free.map((column) => (column === counter ? asCounter(column) : column));
  const { counters: found, notices: counterNotices } = findCounters(
    counterColumns,
    course,
    options,
    !hasFlow,
  );
  const counters = found.map(({ column: _column, unit: _unit, ...one }) => one);
  if (!hasFlow && counters.length === 0) throw nothingFound(columns, flows, isNamed, modes !== null);

  const side = options.side ?? sideOf(columns, flows, course.watts === null ? null : { volts, amps, watts });
  if (side === null && watts === null && hasFlow && isMainsVoltage(volts!))
    throw logError('log.side', { volts: sizeOf(volts!.values) });
  const flow = watts ?? amps;
  return {
    rows: timesS.length,
    ...{ timesS, partStarts },
    clock: {
      kind: clock.written === 'rows' ? 'rows' : clock.kind,
      stepS: clock.stepS,
      startTime: startTimeOf({ ...clock, stampsS }),
    },
    sampling: samplingOf(
      timesS,
      clock.stepS,
      (flows.power ?? flows.amps)?.column.name.isMean ?? false,
      [volts, amps, watts].flatMap((one) => (one === null ? [] : [one.values])),
    ),
    ...{ volts, amps, watts, counters },
    modes: modes?.modes ?? null,
    positive:
      flow === null
        ? 'unsigned'
        : positiveMeans({
            flow: flow.values,
            volts: volts?.values ?? null,
            modes: modes?.modes ?? null,
            counters,
            partStarts,
            side,
          }),
    side,
    totals: findTotals(table.head, scanned.foot),
    columns: namedColumns(
      long === null ? allColumns : [...clock.columns, ...record.all],
      clock,
      flows,
      units,
      found,
      modes?.column ?? null,
    ),
    layout: {
      rowsAre: long === null ? 'wide' : 'long',
      isNamed: table.names !== null,
      delimiter: table.delimiter,
      clock: clock.written === 'rows' ? null : clockLayout(clock),
      tests: clock.kind === 'elapsed' ? partStarts.length : 1,
      metric: long === null ? null : ((flows.power ?? flows.amps ?? flows.volts)?.column.shown ?? null),
    },
    notices: [
      ...rowNotices,
      ...clock.notices,
      ...placed.notices,
      ...flowNotices,
      ...unitNotices,
      ...counterNotices,
    ],
  };
}

/** Of tests side by side, each with a time of the same name, that which stands left of the column told. */
function ofBlock(columns: readonly FileColumn[], told: ToldColumns): readonly FileColumn[] {
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

/** A carriage return alone ends a line too. */
function withLineFeeds(text: string): string {
  return text.includes('\r') && !text.includes('\n') ? text.replaceAll('\r', '\n') : text;
}

/** @throws MeasureError `rows.malformed`, `log.rows`. */
function checkedRows(
  text: string,
  table: LogTable,
  { rowCount, malformed, foot }: LogRows,
): { readonly rowCount: number; readonly notices: readonly LogNotice[] } {
  const notices: LogNotice[] = [];
  const [first] = malformed;
  if (first !== undefined) {
    const found = `"${cleanText(first.text, 40)}"`;
    if (malformed.length > MOST_MALFORMED_SHARE * rowCount)
      throw readError(
        'rows.malformed',
        { malformed: malformed.length, rows: rowCount, found },
        { line: first.line },
      );
    const lines = malformed.slice(0, 3).map(({ line }) => line);
    notices.push({ code: 'rows.malformed', lines, more: malformed.length - lines.length, found });
  }
  const isCutLine = foot.length === 1 && isCut(text) && cellKind(foot[0]!.cells[0] ?? '') === table.kinds[0];
  const isCutRow = foot.length === 0 && rowCount > 0 && endsInCutRow(text, { ...table, dialect: table });
  if (isCutLine || isCutRow) notices.push({ code: 'rows.cut', lines: 1 });
  const kept = isCutRow ? rowCount - 1 : rowCount;
  if (kept < LEAST_ROWS)
    throw logError('log.rows', { rows: kept, least: LEAST_ROWS }, { line: table.bodyLine });
  return { rowCount: kept, notices };
}

function isCut(text: string): boolean {
  return !text.endsWith('\n');
}

/**
 * Rows that only their order places, at the interval that the head gives.
 *
 * @throws MeasureError `log.time` where it gives none; `log.capture` where it is a waveform's.
 */
function countedRows(table: LogTable, columns: readonly FileColumn[], rowCount: number): FoundClock {
  const { intervalS } = timeSettings(table.head.flatMap(readSettings));
  if (intervalS === null) return noClock(columns);
  if (intervalS < SHORTEST_STEP_S) throw logError('log.capture', { rows: rowCount, stepS: intervalS });
  return {
    kind: 'elapsed',
    stampsS: Float64Array.from({ length: rowCount }, (_, row) => row * intervalS),
    stepS: intervalS,
    ...{ zoneMinutes: Number.NaN, isDateKnown: false, columns: [], written: 'rows' },
    notices: [{ code: 'clock.rows', intervalS }],
  };
}

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
function arrangedRows(clock: FoundClock, columns: readonly FileColumn[], told: ToldColumns): ArrangedRows {
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

function firstRows(column: FileColumn, count: number): FileColumn {
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

function medianStep(timesS: Float64Array): number {
  const stride = Math.max(1, Math.floor(timesS.length / 20_000));
  const steps: number[] = [];
  for (let row = 1; row < timesS.length; row += stride) steps.push(timesS[row]! - timesS[row - 1]!);
  return Float64Array.from(steps).sort()[steps.length >> 1]!;
}

interface FoundFlows {
  readonly flows: Flows;
  /** Of columns without names: one that was found to be a counter. */
  readonly counter: FileColumn | null;
  readonly notices: readonly LogNotice[];
}

function foundFlows(
  columns: readonly FileColumn[],
  told: ToldColumns,
  isNamed: boolean,
  course: Parameters<typeof unnamedColumns>[1],
): FoundFlows {
  const named = namedFlows(columns, told);
  const hasAny = Object.values(named.flows).some((flow) => flow !== null) || told.counter !== undefined;
  const unnamed = isNamed || hasAny ? null : unnamedColumns(columns, course);
  if (unnamed === null) return { ...named, counter: null };
  const { power, volts, amps } = unnamed.flows;
  const shown = [power, volts, amps].map((one) => one?.column.shown ?? null);
  return {
    ...unnamed,
    notices: [
      {
        code: 'columns.unnamed',
        power: shown[0]!,
        volts: shown[1]!,
        amps: shown[2]!,
        counter: unnamed.counter?.shown ?? null,
      },
    ],
  };
}

/** A column without a name that counts what flows. */
function asCounter(column: FileColumn): FileColumn {
  return { ...column, name: { ...column.name, quantity: 'charge' } };
}

function flowColumn(reading: Reading | null, unit: LogUnit | null): LogColumn | null {
  if (reading === null || unit === null) return null;
  const { numbers, decimals, shown } = reading.column;
  const { factor } = unit;
  return {
    name: shown,
    values: factor === 1 ? numbers! : numbers!.map((number) => number * factor),
    step: factor * readingStep(numbers!, decimals),
  };
}

function product(volts: LogColumn | null, amps: LogColumn | null): Float64Array | null {
  return volts === null || amps === null ? null : volts.values.map((volt, row) => volt * amps.values[row]!);
}

function nothingFound(
  columns: readonly FileColumn[],
  flows: Flows,
  isNamed: boolean,
  hasModes: boolean,
): Error {
  const readable = columns.filter(({ numbers, countsUp }) => numbers !== null && !countsUp);
  const names = readable.map(({ shown }) => shown);
  if (flows.volts !== null) return logError('log.quantity.half', { has: 'volts', columns: names });
  if (flows.amps !== null) return logError('log.quantity.half', { has: 'amps', columns: names });
  // Beside the modes of a battery, a column that goes down and up with them says what is left in it.
  const levels = isNamed || !hasModes ? [] : readable.filter(({ numbers }) => isLevel(numbers!));
  return levels.length === 1
    ? unknownCounter(levels[0]!)
    : logError('log.quantity', { columns: names, isNamed });
}

function isLevel(numbers: Float64Array): boolean {
  return counterShape(numbers)?.kind === 'remaining';
}

const MAINS_FROM_V = 85;
const MAINS_TO_V = 265;

function isMainsVoltage({ values }: LogColumn): boolean {
  const size = sizeOf(values);
  return size >= MAINS_FROM_V && size <= MAINS_TO_V;
}

/** Of volts times amperes: a power that is less is that of AC. */
const APPARENT = 0.97;

/** Which side of the inverter a log is from, as far as it shows. */
function sideOf(
  columns: readonly FileColumn[],
  flows: Flows,
  values: Readonly<Record<'volts' | 'amps' | 'watts', LogColumn | null>> | null,
): 'ac' | 'dc' | null {
  const named = [flows.power, flows.volts, flows.amps].flatMap((one) => one?.column.name.side ?? []);
  if (named.length > 0 && named.every((side) => side === named[0])) return named[0]!;
  if (columns.some(({ name }) => name.quantity === 'power factor' || name.quantity === 'apparent power'))
    return 'ac';
  if (values?.volts == null) return null;
  const { volts, amps, watts } = values;
  if (!isMainsVoltage(volts)) return sizeOf(volts.values) < MAINS_FROM_V ? 'dc' : null;
  if (columns.some(({ name }) => name.quantity === 'frequency')) return 'ac';
  if (amps === null || watts === null) return null;
  let [real, apparent] = [0, 0];
  for (let row = 0; row < volts.values.length; row++) {
    const product = Math.abs(volts.values[row]! * amps.values[row]!);
    if (Number.isNaN(product) || Number.isNaN(watts.values[row]!)) continue;
    apparent += product;
    real += Math.abs(watts.values[row]!);
  }
  return apparent > 0 && real < APPARENT * apparent ? 'ac' : null;
}

function namedColumns(
  columns: readonly FileColumn[],
  clock: FoundClock,
  flows: Flows,
  units: FlowUnits,
  counters: ReturnType<typeof findCounters>['counters'],
  modes: FileColumn | null,
): NamedColumn[] {
  return columns.map((column): NamedColumn => {
    const is = (reading: Reading | null): boolean => isColumn(reading?.column, column);
    const counter = counters.find((one) => isColumn(one.column, column));
    const [quantity, unit]: [LogQuantity, string] = clock.columns.includes(column)
      ? ['time', column.name.unit?.symbol ?? '']
      : is(flows.power)
        ? ['power', units.power!.symbol]
        : is(flows.volts)
          ? ['voltage', units.volts!.symbol]
          : is(flows.amps)
            ? ['current', units.amps!.symbol]
            : counter !== undefined
              ? [counter.quantity, counter.unit.symbol]
              : isColumn(modes ?? undefined, column)
                ? ['mode', '']
                : restQuantity(column);
    return { name: column.shown, quantity, unit };
  });
}

/** The same column of the file, with all its rows or some. */
function isColumn(one: FileColumn | undefined, other: FileColumn): boolean {
  return one !== undefined && one.index === other.index && one.shown === other.shown;
}

function restQuantity({ name, countsUp, words }: FileColumn): [LogQuantity, string] {
  if (countsUp && name.quantity !== 'time') return ['row number', ''];
  if (words !== null && name.quantity !== 'metric' && name.quantity !== 'mode') return ['other', ''];
  return [name.quantity ?? 'other', name.unit?.symbol ?? ''];
}
