import { readSettings } from '../../read/head/settings.ts';
import { timeSettings } from '../../read/head/timeSettings.ts';
import { readError } from '../../read/readErrors.ts';
import { endsInCutRow } from '../../read/table/rowWidths.ts';
import { decodeText } from '../../read/text/decodeText.ts';
import { cleanText } from '../../read/text/textAccess.ts';
import { median } from '../../signal/statistics.ts';
import { arrangedRows, firstRows, ofBlock } from './arrangedRows.ts';
import { clockLayout, type FoundClock, findClock, noClock, startTimeOf } from './clock.ts';
import { findCounters } from './counters.ts';
import type { TimeOrder } from './dayOrder.ts';
import { positiveMeans } from './direction.ts';
import type { EnergyLog, LogColumn } from './energyLog.ts';
import { type FileColumn, fileColumns } from './fileColumns.ts';
import { flowUnits, sizeOf } from './flowUnits.ts';
import { cellKind } from './logCells.ts';
import { logError } from './logErrors.ts';
import { isMainsVoltage, sideOf } from './logSide.ts';
import { type LogTable, locateLog } from './logTable.ts';
import type { LogUnit } from './logUnits.ts';
import { findModes } from './modes.ts';
import { namedColumns } from './namedColumns.ts';
import { nothingFound } from './nothingFound.ts';
import type { LogNotice } from './notices.ts';
import { placeRows } from './placeRows.ts';
import { readingStep } from './readingStep.ts';
import { type Flows, namedFlows, type Reading, type ToldColumns } from './readings.ts';
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

function medianStep(timesS: Float64Array): number {
  const stride = Math.max(1, Math.floor(timesS.length / 20_000));
  const steps: number[] = [];
  for (let row = 1; row < timesS.length; row += stride) steps.push(timesS[row]! - timesS[row - 1]!);
  return median(steps);
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
