import { median } from '../../signal/statistics.ts';
import type { EnergyLog, LogColumn, LogCounter } from '../log/energyLog.ts';

/** What flows, row by row, in one sense of sign: out of the unit is positive. */
export interface Course {
  /** Shape N: the rows of the log that tell a load. Seconds since the log's first row. */
  readonly timesS: Float64Array;
  /** First row of each part, 0 first: nothing is integrated from one part into the next. */
  readonly partStarts: readonly number[];
  /** Shape N, W; null where the log doesn't tell watts. */
  readonly watts: Float64Array | null;
  /** Why there are none. */
  readonly whyNoWatts: string | null;
  /** Shape N, A; null: not in the log, or of an AC outlet, where amperes add up to nothing. */
  readonly amps: Float64Array | null;
  /** Shape N, V. */
  readonly volts: Float64Array | null;
  /** What watts are made of. */
  readonly from: PowerSource;
  /** Smallest step of a reading, in W, A, V and, of a counter, Wh; 0: none known. */
  readonly steps: { readonly watts: number; readonly amps: number; readonly volts: number };
  readonly counterStepWh: number;
  /** Shape N: watts, or amperes where there are none: what tells whether there is a load. */
  readonly load: Float64Array;
  /** Smallest step of `load` at a usual row. */
  readonly loadStep: number;
  readonly sampling: EnergyLog['sampling'];
  readonly side: EnergyLog['side'];
  readonly modes: EnergyLog['modes'];
  /** Seconds that two stamps can tell apart. */
  readonly stampS: number;
  readonly clockByRows: boolean;
  /** Nothing in the log says which way it flows. */
  readonly directionAssumed: boolean;
}

type PowerSource = 'watts' | 'volts and amperes' | 'counter' | 'nothing';

/** Above any battery of such a unit and below any outlet, V. Common practice, no source. */
const MOST_BATTERY_V = 75;

/**
 * The rows of a log that tell a load, with watts, amperes and volts in one sense of sign.
 *
 * Of watts and of volts times amperes on the DC side, that which is resolved finer is taken.
 *
 * @returns null where no column tells a load at all.
 */
export function courseOf(log: EnergyLog): Course | null {
  const { volts, amps } = log;
  const counter = log.counters.find(({ quantity }) => quantity === 'energy') ?? null;
  const isDirect = log.side === 'dc' || (log.side === null && highest(volts) < MOST_BATTERY_V);
  const product = volts !== null && amps !== null && isDirect ? { volts, amps } : null;
  const from = sourceOf(log.watts, product, counter);
  if (from === 'nothing' && amps === null) return null;
  const told =
    from === 'watts'
      ? log.watts!.values
      : from === 'counter'
        ? counterPower(log, counter!)
        : from === 'nothing'
          ? amps!.values
          : productOf(volts!.values, amps!.values);
  const rows = presentRows(told, product === null ? null : product.volts.values);
  const pick = (values: Float64Array): Float64Array => valuesAt(values, rows, (value) => value);
  // What is left says by itself which way it goes.
  const isGauge = from === 'counter' && counter!.kind === 'remaining';
  const signed = (values: Float64Array): Float64Array =>
    isGauge ? pick(values) : outOfUnit(log, values, rows);
  const watts = from === 'nothing' ? null : signed(told);
  const currents = amps !== null && isDirect ? signed(amps.values) : null;
  const load = watts ?? signed(told);
  const voltsPicked = volts === null ? null : pick(volts.values);
  return {
    timesS: pick(log.timesS),
    partStarts: partsOf(log, rows, from === 'counter' ? counter : null),
    watts,
    whyNoWatts: watts === null ? whyNoWatts(log, isDirect) : null,
    amps: currents,
    volts: voltsPicked,
    from,
    steps: { watts: log.watts?.step ?? 0, amps: amps?.step ?? 0, volts: volts?.step ?? 0 },
    counterStepWh: counter?.step ?? 0,
    load,
    loadStep: loadStep(log, from),
    sampling: from === 'counter' ? 'mean until the row' : log.sampling,
    side: log.side,
    modes: log.modes === null ? null : Array.from(rows, (row) => log.modes![row] ?? null),
    stampS: log.clock.stepS,
    clockByRows: log.clock.kind === 'rows',
    directionAssumed: log.positive === 'unsigned' && !isGauge && !tellsDirection(log.modes),
  };
}

function tellsDirection(modes: EnergyLog['modes']): boolean {
  return modes?.some((mode) => mode === 'charge' || mode === 'discharge') ?? false;
}

function sourceOf(
  watts: LogColumn | null,
  product: { readonly volts: LogColumn; readonly amps: LogColumn } | null,
  counter: LogCounter | null,
): PowerSource {
  if (watts !== null && product !== null) {
    const ofProduct = relativeStep(product.volts) + relativeStep(product.amps);
    return ofProduct < relativeStep(watts) ? 'volts and amperes' : 'watts';
  }
  if (watts !== null) return 'watts';
  if (product !== null) return 'volts and amperes';
  return counter !== null ? 'counter' : 'nothing';
}

/** Of a usual reading that is not zero. */
function relativeStep({ values, step }: LogColumn): number {
  const sizes = new Float64Array(values.length);
  let count = 0;
  for (const value of values) if (Math.abs(value) > 2 * step) sizes[count++] = Math.abs(value);
  return count === 0 ? Number.POSITIVE_INFINITY : step / median(sizes.subarray(0, count));
}

function highest(column: LogColumn | null): number {
  let most = 0;
  for (const value of column?.values ?? []) if (value > most) most = value;
  return most;
}

function whyNoWatts({ volts, side }: EnergyLog, isDirect: boolean): string {
  if (volts === null) return 'the log has no watts, and amperes alone tell no energy: it needs volts too';
  if (side === 'ac') return 'volts × amperes of AC is apparent power, not energy: log watts, or watt-hours';
  return isDirect
    ? 'the log has no watts'
    : 'volts × amperes is power on DC alone: say which side it is from with --side, or log watts';
}

function productOf(volts: Float64Array, amps: Float64Array): Float64Array {
  return volts.map((value, i) => value * amps[i]!);
}

function presentRows(told: Float64Array, volts: Float64Array | null): Int32Array {
  const rows = new Int32Array(told.length);
  let count = 0;
  for (let row = 0; row < told.length; row++) {
    if (!Number.isNaN(told[row]!) && (volts === null || !Number.isNaN(volts[row]!))) rows[count++] = row;
  }
  return rows.subarray(0, count);
}

/** Readings of the rows taken, positive where it flows out of the unit. */
function outOfUnit(
  { positive, modes, amps }: EnergyLog,
  values: Float64Array,
  rows: Int32Array,
): Float64Array {
  if (positive === 'unsigned')
    return valuesAt(values, rows, (value, row) => (modes?.[row] === 'charge' ? -1 : 1) * Math.abs(value));
  const out = positive === 'charge' ? -1 : 1;
  const isBothWays = (column: Float64Array): boolean => column.some((value) => value < 0);
  // Watts without a sign beside amperes that have one.
  const signs = amps !== null && !isBothWays(values) && isBothWays(amps.values) ? amps.values : null;
  return valuesAt(values, rows, (value, row) => (signs !== null && signs[row]! < 0 ? -out : out) * value);
}

function valuesAt(
  values: Float64Array,
  rows: Int32Array,
  made: (value: number, row: number) => number,
): Float64Array {
  const taken = new Float64Array(rows.length);
  for (let i = 0; i < rows.length; i++) taken[i] = made(values[rows[i]!]!, rows[i]!);
  return taken;
}

/** What a counter says of each interval, as the mean power until its row; at a reset nothing is known. */
function counterPower({ timesS, partStarts }: EnergyLog, { values, kind }: LogCounter): Float64Array {
  const power = new Float64Array(values.length).fill(Number.NaN);
  const starts = new Set(partStarts);
  let last = -1;
  for (let row = 0; row < values.length; row++) {
    if (starts.has(row)) last = -1;
    if (Number.isNaN(values[row]!)) continue;
    const hours = last < 0 ? Number.NaN : (timesS[row]! - timesS[last]!) / 3600;
    const moved = kind === 'per interval' ? values[row]! : last < 0 ? 0 : values[row]! - values[last]!;
    power[row] = last < 0 ? 0 : hours > 0 ? (kind === 'remaining' ? -moved : moved) / hours : 0;
    last = row;
  }
  return power;
}

/** Where the log's parts begin among the rows taken, and where a counter was reset. */
function partsOf({ partStarts }: EnergyLog, rows: Int32Array, counter: LogCounter | null): number[] {
  const parts: number[] = [];
  let next = 0;
  for (let i = 0; i < rows.length; i++) {
    const row = rows[i]!;
    let begins = i === 0;
    while (next < partStarts.length && partStarts[next]! <= row) {
      begins = true;
      next++;
    }
    const isReset =
      counter?.kind === 'cumulative' && i > 0 && counter.values[row]! < counter.values[rows[i - 1]!]!;
    if (begins || isReset) parts.push(i);
  }
  return parts;
}

function loadStep(log: EnergyLog, from: PowerSource): number {
  const { watts, volts, amps, counters } = log;
  if (from === 'watts') return watts!.step;
  if (from === 'nothing') return amps!.step;
  if (from === 'counter') {
    const [counter] = counters.filter(({ quantity }) => quantity === 'energy');
    const { timesS } = log;
    const hours = (timesS[timesS.length - 1]! - timesS[0]!) / 3600 / Math.max(1, timesS.length - 1);
    return hours > 0 ? counter!.step / hours : 0;
  }
  // Where no current flows the volts' step moves nothing.
  return highest(volts) * amps!.step;
}
