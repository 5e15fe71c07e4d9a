import type { MeasureError } from '../../base/measureError.ts';
import type { AxisColumn } from '../columns/columnRole.ts';
import { nameAndUnit, nameSays } from '../head/names.ts';
import type { StatedInterval, TimeSettings } from '../head/timeSettings.ts';
import type { ReadNotice } from '../notices.ts';
import { readError } from '../readErrors.ts';
import type { TimeBase } from './arrangeSamples.ts';
import { agreementsOf, reconcileInterval } from './reconcileInterval.ts';

/** What is known about the time of a record before its rows are laid out. */
interface TimeWitnesses {
  readonly axis: AxisColumn;
  /**
   * Lays the rows out by the axis column, in its own unit, its cells being right to within a resolution; null
   * where there is no axis.
   */
  readonly layRows: ((resolution: number) => TimeBase) | null;
  readonly rowCount: number;
  /** The last printed digit of the stamps, in their unit. */
  readonly resolution: number;
  readonly settings: TimeSettings;
  /** Columns of text, of which one may be a time that is no number. */
  readonly textColumnNames: readonly string[];
  /** Given by the person, for a file that has no time. */
  readonly sampleRateHz: number | undefined;
}

/** Stamps that are whole numbers stray from their line by rounding only. */
const INDEX_RESOLUTION = 1e-9;

/** Between samples: a thousandth of what the fastest scopes do, and four months. */
const SHORTEST_S = 1e-15;
const LONGEST_S = 1e7;
/** No outlet's wave is seen in samples so far apart. */
const SLOW_S = 0.5;
/** Of the first sample: beyond any clock, which count from 1970 at the earliest. */
const LATEST_S = 1e12;

/**
 * The record's time base in seconds.
 *
 * @throws MeasureError `time.none` where neither the file nor the person says how fast it was sampled;
 * `time.still`; `time.absurd` where no instrument samples so; `time.slow` where no wave shows.
 */
export function captureTimeBase(witnesses: TimeWitnesses): { timeBase: TimeBase; notices: ReadNotice[] } {
  const found = timeBaseOf(witnesses);
  const { intervalS, startS } = found.timeBase;
  const isPlausible = intervalS >= SHORTEST_S && intervalS <= LONGEST_S && Math.abs(startS) <= LATEST_S;
  if (!isPlausible) throw absurdTime(intervalS, startS);
  // Of a time without a unit the seconds are assumed, and may be microseconds.
  const { kind, isUnitAssumed } = witnesses.axis;
  if (kind === 'time' && !isUnitAssumed && intervalS >= SLOW_S) throw readError('time.slow', { intervalS });
  return found;
}

function timeBaseOf(witnesses: TimeWitnesses): { timeBase: TimeBase; notices: ReadNotice[] } {
  const { axis, layRows, sampleRateHz } = witnesses;
  if (axis.kind === 'time' && layRows !== null) return fromStamps(witnesses, layRows);
  const { settings, notices } = settledInterval(witnesses.settings, null, witnesses.rowCount);
  const intervalS = settings.intervalS ?? (sampleRateHz === undefined ? null : 1 / sampleRateHz);
  const { timeBase, notices: more } = fromInterval({ ...witnesses, settings }, intervalS);
  return { timeBase, notices: [...notices, ...more] };
}

function fromStamps(
  witnesses: TimeWitnesses,
  layRows: NonNullable<TimeWitnesses['layRows']>,
): { timeBase: TimeBase; notices: ReadNotice[] } {
  const { axis, resolution, sampleRateHz } = witnesses;
  const raw = layRows(resolution);
  const unitFactor = axis.column?.unit?.factor ?? 1;
  const columnS = raw.intervalS * unitFactor;
  const { settings, notices: contradictions } = settledInterval(witnesses.settings, columnS, raw.sampleCount);
  const reconciled = reconcileInterval({
    intervalS: columnS,
    uncertaintyS: (resolution * unitFactor) / Math.max(1, raw.sampleCount - 1),
    sampleCount: raw.sampleCount,
    isUnitAssumed: axis.isUnitAssumed,
    settings,
  });
  const notices: ReadNotice[] = [...contradictions];
  if (reconciled.notice !== null) notices.push(reconciled.notice);
  else if (axis.isUnitAssumed) notices.push({ code: 'time.assumed' });
  if (raw.isCoarse) notices.push({ code: 'time.coarse' });
  if (sampleRateHz !== undefined) notices.push({ code: 'time.rateIgnored' });
  return { timeBase: inSeconds(raw, unitFactor * reconciled.unitCorrection, reconciled.intervalS), notices };
}

/**
 * A time base in stamps as one in seconds.
 *
 * @param intervalS - the interval decided on, where it is not just that of the stamps. The first stamp stays
 * where it is; a coarse one gives way, since its line is known best in the middle.
 */
function inSeconds(
  raw: TimeBase,
  secondsPerUnit: number,
  intervalS: number = raw.intervalS * secondsPerUnit,
): TimeBase {
  const middle = raw.isCoarse ? (raw.sampleCount - 1) / 2 : 0;
  const startS = raw.startS * secondsPerUnit - middle * (intervalS - raw.intervalS * secondsPerUnit);
  const arrangement =
    raw.arrangement.kind === 'resampled'
      ? { ...raw.arrangement, offsetsS: raw.arrangement.offsetsS.map((offset) => offset * secondsPerUnit) }
      : raw.arrangement;
  // An interval that the file states itself is not in doubt for its stamps.
  const { intervalWithin, ...rest } = raw;
  const isStated = intervalS !== raw.intervalS * secondsPerUnit;
  return {
    ...rest,
    startS,
    intervalS,
    arrangement,
    ...(isStated || intervalWithin === undefined ? {} : { intervalWithin }),
  };
}

function fromInterval(
  witnesses: TimeWitnesses,
  intervalS: number | null,
): { timeBase: TimeBase; notices: ReadNotice[] } {
  const { layRows, rowCount, settings, sampleRateHz } = witnesses;
  if (intervalS === null) throw noTime(witnesses);
  const notices: ReadNotice[] =
    settings.intervalS !== null && sampleRateHz !== undefined ? [{ code: 'time.rateIgnored' }] : [];
  if (layRows === null) {
    const startS = settings.startS ?? 0;
    const arrangement = { kind: 'as read' } as const;
    return { timeBase: { startS, intervalS, sampleCount: rowCount, arrangement, isCoarse: false }, notices };
  }
  const numbered = inSeconds(layRows(INDEX_RESOLUTION), intervalS);
  // Numbers from 0 or 1 say nothing of the trigger; negative ones count from it.
  const startS = settings.startS ?? Math.min(0, numbered.startS);
  return { timeBase: { ...numbered, startS }, notices };
}

function noTime({ axis, textColumnNames }: TimeWitnesses): MeasureError {
  const textual = textColumnNames.find((name) => nameSays(nameAndUnit(name).name) === 'time');
  return readError('time.none', { isNumbered: axis.kind === 'index', textColumn: textual ?? null });
}

function absurdTime(intervalS: number, startS: number): MeasureError {
  return intervalS >= SHORTEST_S && intervalS <= LONGEST_S
    ? readError('time.absurd.start', { startS, latestS: LATEST_S })
    : readError('time.absurd.interval', { intervalS, shortestS: SHORTEST_S, longestS: LONGEST_S });
}

/** Settings that print three digits and mean the same interval lie within this. */
const ROUNDED_WITHIN = 0.01;

/**
 * Settles a head that states several sampling intervals: the one that agrees with most of the rest counts (the time
 * column twice, a stated span, the divisions of the screen, the other statements), the first where none does better.
 *
 * @param columnS - the interval of the time column; null where there is none.
 * @param sampleCount - samples in the record.
 * @returns the settings with that interval, and a notice that names the contradiction where there is one.
 */
function settledInterval(
  settings: TimeSettings,
  columnS: number | null,
  sampleCount: number,
): { readonly settings: TimeSettings; readonly notices: readonly ReadNotice[] } {
  const { stated } = settings;
  const [first] = stated;
  const contrary = stated.find(({ intervalS }) => !agree(intervalS, first!.intervalS));
  if (first === undefined || contrary === undefined) return { settings, notices: [] };
  const support = ({ intervalS }: StatedInterval): number =>
    (columnS !== null && agree(intervalS, columnS) ? 2 : 0) +
    agreementsOf(settings, intervalS, sampleCount) +
    stated.filter((other) => agree(intervalS, other.intervalS)).length;
  const best = stated.reduce((most, next) => (support(next) > support(most) ? next : most));
  const isSupported = stated.every(
    (other) => agree(other.intervalS, best.intervalS) || support(other) < support(best),
  );
  return {
    settings: { ...settings, intervalS: best.intervalS },
    notices: [
      {
        code: 'time.contradicts',
        stated: [said(first), said(contrary)],
        best: best.key,
        isSupported,
      },
    ],
  };
}

function said({ key, intervalS }: StatedInterval): { readonly key: string; readonly intervalS: number } {
  return { key, intervalS };
}

function agree(a: number, b: number): boolean {
  return Math.abs(a / b - 1) <= ROUNDED_WITHIN;
}
