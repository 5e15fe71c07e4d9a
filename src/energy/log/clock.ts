import { powerOfTen } from '../../base/elementary.ts';
import { isoTime } from './calendar.ts';
import type { StampColumn } from './cellReaders.ts';
import { dayOrder, type TimeOrder } from './dayOrder.ts';
import type { FileColumn } from './fileColumns.ts';
import { logError } from './logErrors.ts';
import type { ClockWriting, LogLayout } from './logLayout.ts';
import type { LogNotice } from './notices.ts';

/** The clock that places the rows. */
export interface FoundClock {
  readonly kind: 'absolute' | 'elapsed';
  /** In seconds, since 1970 or since some start; NaN where a row has no stamp. */
  readonly stampsS: Float64Array;
  readonly stepS: number;
  /** Minutes ahead of UTC, NaN: unknown. Only of an absolute clock. */
  readonly zoneMinutes: number;
  /** False where the date could be either of two. */
  readonly isDateKnown: boolean;
  /** Columns that it is made of. */
  readonly columns: readonly FileColumn[];
  readonly written: ClockWriting;
  readonly notices: readonly LogNotice[];
}

type Candidate = Omit<FoundClock, 'notices'> & { readonly isUnitAssumed: boolean };

/**
 * Chooses the clock of a log among its columns: one that is never set back before one that is, then the one whose
 * stamps repeat least, then the first.
 *
 * @returns null where no column is a clock.
 * @throws MeasureError `log.time.order` where the order of day and month decides how long the log is.
 */
export function findClock(columns: readonly FileColumn[], order: TimeOrder | undefined): FoundClock | null {
  const candidates = [...stampClocks(columns, order), ...numberClocks(columns)].filter(({ stampsS }) =>
    moves(stampsS),
  );
  const ranked = candidates
    .map((clock, place) => ({ clock, place, falls: falls(clock.stampsS), repeats: repeats(clock.stampsS) }))
    .sort((a, b) => a.falls - b.falls || a.repeats - b.repeats || a.place - b.place);
  const best = ranked[0]?.clock;
  if (best === undefined) return null;
  const others = ranked.slice(1).filter(({ falls: count }) => count === ranked[0]!.falls);
  return {
    ...best,
    notices: [
      ...(best.isUnitAssumed ? [{ code: 'clock.assumed', column: best.columns[0]!.shown } as const] : []),
      ...others.flatMap(({ clock }) => disagreement(best, clock)),
    ],
  };
}

function moves(stamps: Float64Array): boolean {
  const first = stamps.find((stamp) => !Number.isNaN(stamp));
  return first !== undefined && stamps.some((stamp) => !Number.isNaN(stamp) && stamp !== first);
}

function falls(stamps: Float64Array): number {
  let count = 0;
  let previous = Number.NaN;
  for (const stamp of stamps) {
    if (stamp < previous) count++;
    if (!Number.isNaN(stamp)) previous = stamp;
  }
  return count;
}

function repeats(stamps: Float64Array): number {
  let count = 0;
  for (let row = 1; row < stamps.length; row++) if (stamps[row] === stamps[row - 1]) count++;
  return count;
}

/** Of the span: clocks that differ by more tell different energies. */
const DISAGREE = 1e-3;

function disagreement(best: FoundClock | Candidate, other: Candidate): LogNotice[] {
  const [span, otherSpan] = [spanOf(best.stampsS), spanOf(other.stampsS)];
  const difference = otherSpan - span;
  const resolution = best.stepS + other.stepS;
  if (Math.abs(difference) <= Math.max(DISAGREE * span, 2 * resolution)) return [];
  return [
    {
      code: 'clock.others',
      used: best.columns.map(({ shown }) => shown),
      other: other.columns.map(({ shown }) => shown),
      differencePercent: (100 * difference) / span,
    },
  ];
}

function spanOf(stamps: Float64Array): number {
  const first = stamps.find((stamp) => !Number.isNaN(stamp)) ?? 0;
  return (stamps.findLast((stamp) => !Number.isNaN(stamp)) ?? 0) - first;
}

/** Clocks of written stamps: whole ones, and dates with the time in another column. */
function stampClocks(columns: readonly FileColumn[], order: TimeOrder | undefined): Candidate[] {
  const found: Candidate[] = [];
  const stamped = columns.filter((column) => column.stamps !== null);
  for (const column of stamped) {
    const { stamps } = column;
    if (stamps === null) continue;
    if (stamps.isDated && stamps.isTimed) found.push(dated([column], stamps, stamps, order));
    else if (stamps.isDated) {
      const times = stamped.find(({ stamps: other }) => other?.isTimed && !other.isDated);
      if (times?.stamps) found.push(dated([column, times], stamps, times.stamps, order));
    } else if (!stamped.some(({ stamps: other }) => other?.isDated && !other.isTimed))
      found.push(undated(column, stamps));
  }
  // Dates alone tell days apart, which is better than nothing.
  if (found.length === 0) {
    const dates = stamped.find(({ stamps }) => stamps?.isDated);
    if (dates?.stamps) found.push(dated([dates], dates.stamps, dates.stamps, order));
  }
  return found;
}

function dated(
  columns: readonly FileColumn[],
  dates: StampColumn,
  times: StampColumn,
  told: TimeOrder | undefined,
): Candidate {
  const chosen = dayOrder(dates, times.seconds, told);
  const days = chosen.order === 'day-month' ? dates.dayMonth : dates.monthDay;
  const stampsS = new Float64Array(days.length);
  for (let row = 0; row < days.length; row++) stampsS[row] = 86_400 * days[row]! + times.seconds[row]!;
  const isIso = dates.written === 'ISO 8601';
  return {
    kind: 'absolute',
    stampsS,
    stepS: times.unitS,
    zoneMinutes: times.zoneMinutes,
    isDateKnown: chosen.isKnown,
    columns,
    written: isIso
      ? 'ISO 8601'
      : !chosen.isKnown
        ? 'd/m/y or m/d/y'
        : chosen.order === 'day-month'
          ? 'd/m/y'
          : 'm/d/y',
    isUnitAssumed: false,
  };
}

const DAY_S = 86_400;

function undated(column: FileColumn, { seconds, unitS, written }: StampColumn): Candidate {
  const isMinutes = written === 'H:MM' && column.name.unit?.symbol === 'min';
  return {
    kind: 'elapsed',
    stampsS: isMinutes ? seconds.map((stamp) => stamp / 60) : withDays(seconds),
    stepS: isMinutes ? unitS / 60 : unitS,
    ...{ zoneMinutes: Number.NaN, isDateKnown: false, columns: [column], written, isUnitAssumed: false },
  };
}

/** A time of day that falls by nearly a day at midnight goes on with the next. */
function withDays(seconds: Float64Array): Float64Array {
  if (seconds.some((second) => second >= DAY_S)) return seconds;
  const placed = new Float64Array(seconds.length);
  let days = 0;
  let previous = Number.NaN;
  for (const [row, second] of seconds.entries()) {
    if (previous > 0.75 * DAY_S && second < 0.25 * DAY_S) days++;
    placed[row] = second + days * DAY_S;
    if (!Number.isNaN(second)) previous = second;
  }
  return placed;
}

const EPOCHS: readonly (readonly [perSecond: number, written: ClockWriting])[] = [
  [1, 'epoch seconds'],
  [1e3, 'epoch milliseconds'],
  [1e6, 'epoch microseconds'],
];
/** 2001 to 2100. */
const EPOCH_FROM = 1e9;
const EPOCH_TO = 4.1e9;

const WRITTEN: Readonly<Record<string, ClockWriting>> = {
  ms: 'milliseconds',
  min: 'minutes',
  h: 'hours',
  d: 'days',
};

/** Clocks of plain numbers: seconds since 1970, and times since a start. */
function numberClocks(columns: readonly FileColumn[]): Candidate[] {
  return columns.flatMap((column): Candidate[] => {
    const { numbers, name } = column;
    if (numbers === null) return [];
    const plain = { zoneMinutes: 0, columns: [column], isUnitAssumed: false };
    const epoch = EPOCHS.find(([perSecond]) => isEpoch(numbers, perSecond));
    const mayBeTime = name.quantity === 'time' || name.quantity === null;
    if (epoch !== undefined && mayBeTime) {
      const [perSecond, written] = epoch;
      const stepS = powerOfTen(-column.decimals) / perSecond;
      const stampsS = numbers.map((number) => number / perSecond);
      return [
        { ...plain, kind: 'absolute', stampsS, stepS: usedStep(stampsS, stepS), isDateKnown: true, written },
      ];
    }
    const isNamed = name.quantity === 'time';
    // A first column without a name that rises evenly, and not by one a row, is a time.
    const isShaped =
      name.full === '' &&
      column.index === 0 &&
      columns.length > 1 &&
      risesEvenly(numbers) &&
      !column.countsUp;
    if (!isNamed && !isShaped) return [];
    const unit = name.unit?.quantity === 'time' ? name.unit : namedUnit(name.full);
    const factor = unit?.factor ?? 1;
    const stampsS = factor === 1 ? numbers : numbers.map((number) => number * factor);
    const stepS = usedStep(stampsS, factor * powerOfTen(-column.decimals));
    const written = WRITTEN[unit?.symbol ?? 's'] ?? 'seconds';
    const elapsed = { ...plain, zoneMinutes: Number.NaN, isDateKnown: false, isUnitAssumed: unit === null };
    return [{ ...elapsed, kind: 'elapsed', stampsS, stepS, written }];
  });
}

/** `Elapsed seconds`, `millis`: a word of the name is the unit. */
function namedUnit(name: string): { readonly symbol: string; readonly factor: number } | null {
  if (/milli|msec|\bms\b/i.test(name)) return { symbol: 'ms', factor: 1e-3 };
  if (/sec(onds?)?\b|sekunden/i.test(name)) return { symbol: 's', factor: 1 };
  if (/min(utes?)?\b|minuten/i.test(name)) return { symbol: 'min', factor: 60 };
  return /hours?\b|hrs?\b|stunden/i.test(name) ? { symbol: 'h', factor: 3600 } : null;
}

function isEpoch(numbers: Float64Array, perSecond: number): boolean {
  let rises = 0;
  let previous = Number.NaN;
  for (const number of numbers) {
    if (Number.isNaN(number)) continue;
    if (!(number >= EPOCH_FROM * perSecond && number <= EPOCH_TO * perSecond)) return false;
    if (number > previous) rises++;
    else if (number < previous) rises--;
    previous = number;
  }
  return rises > 0;
}

/** Digits that are always zero tell nothing apart. */
function usedStep(stampsS: Float64Array, stepS: number): number {
  let step = stepS;
  while (step < 1 && stampsS.every((stamp) => Number.isNaN(stamp) || isWhole(stamp / (10 * step))))
    step *= 10;
  return step;
}

function isWhole(value: number): boolean {
  return Math.abs(value - Math.round(value)) < 1e-4;
}

function risesEvenly(numbers: Float64Array): boolean {
  const step = (numbers.at(-1)! - numbers[0]!) / (numbers.length - 1);
  if (!(step > 0)) return false;
  return numbers.every(
    (number, row) => row === 0 || (number > numbers[row - 1]! && number - numbers[row - 1]! < 3 * step),
  );
}

/** When the first row was, as ISO 8601; null where the clock doesn't say. */
export function startTimeOf(clock: FoundClock): string | null {
  const first = clock.stampsS.find((stamp) => !Number.isNaN(stamp));
  return clock.kind !== 'absolute' || !clock.isDateKnown || first === undefined
    ? null
    : isoTime(first, clock.zoneMinutes);
}

/** As facts of the layout. */
export function clockLayout(clock: FoundClock): LogLayout['clock'] {
  return { columns: clock.columns.map(({ shown }) => shown), written: clock.written };
}

/** @throws MeasureError `log.time`. */
export function noClock(columns: readonly FileColumn[]): never {
  throw logError('log.time', {
    columns: columns.map(({ shown }) => shown),
    isNumbered: columns.some(({ countsUp }) => countsUp),
  });
}
