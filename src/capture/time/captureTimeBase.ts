import { MeasureError } from '../../base/measureError.ts';
import type { Notice } from '../../base/notice.ts';
import type { AxisColumn } from '../columns/axisColumn.ts';
import type { TimeSettings } from '../head/timeSettings.ts';
import { reconcileInterval } from './reconcileInterval.ts';
import type { TimeBase } from './rowArrangement.ts';
import { stampedTimeBase } from './stampedTimeBase.ts';

/** What is known about the time of a record before its rows are laid out. */
export interface TimeWitnesses {
  readonly axis: AxisColumn;
  /** The axis column's cells, one a row; null where there is no axis. */
  readonly stamps: Float64Array | null;
  readonly rowCount: number;
  /** The last printed digit of the stamps, in their unit. */
  readonly resolution: number;
  readonly settings: TimeSettings;
  /** Whether the file keeps rows only where a value changed. */
  readonly keptOnChange: boolean;
  /** Given by the person, for a file that has no time. */
  readonly sampleRateHz: number | undefined;
  readonly lineOfRow: (row: number) => number;
}

/** Stamps that are whole numbers stray from their line by rounding only. */
const INDEX_RESOLUTION = 1e-9;

/**
 * The record's time base in seconds.
 *
 * @throws MeasureError `time.none` where neither the file nor the person says how fast it was sampled;
 * `time.still`.
 */
export function captureTimeBase(witnesses: TimeWitnesses): { timeBase: TimeBase; notices: Notice[] } {
  const { axis, stamps, settings, sampleRateHz } = witnesses;
  return axis.kind === 'time' && stamps !== null
    ? fromStamps(witnesses, stamps)
    : fromInterval(witnesses, settings.intervalS ?? (sampleRateHz === undefined ? null : 1 / sampleRateHz));
}

function fromStamps(
  witnesses: TimeWitnesses,
  stamps: Float64Array,
): { timeBase: TimeBase; notices: Notice[] } {
  const { axis, settings, resolution, sampleRateHz, lineOfRow, keptOnChange } = witnesses;
  const notices: Notice[] = [];
  const raw = stampedTimeBase(stamps, resolution, lineOfRow, keptOnChange);
  const unitFactor = axis.column?.unit?.factor ?? 1;
  const reconciled = reconcileInterval({
    intervalS: raw.intervalS * unitFactor,
    uncertaintyS: (resolution * unitFactor) / Math.max(1, raw.sampleCount - 1),
    sampleCount: raw.sampleCount,
    isUnitAssumed: axis.isUnitAssumed,
    settings,
  });
  if (reconciled.notice !== null) notices.push(reconciled.notice);
  if (axis.isUnitAssumed && reconciled.notice === null) {
    notices.push({
      code: 'time.assumed',
      message: 'The file names no unit of time: seconds are assumed. Check that the frequency makes sense.',
    });
  }
  if (raw.isCoarse) {
    notices.push({
      code: 'time.coarse',
      message:
        'The time stamps are coarser than the samples: the sampling interval is taken from the whole record, not from single steps.',
    });
  }
  if (sampleRateHz !== undefined) {
    notices.push({
      code: 'time.rateIgnored',
      message: 'The file has times of its own: the sample rate given is not used.',
    });
  }
  const factor = unitFactor * reconciled.unitCorrection;
  const intervalS = reconciled.intervalS;
  // A nominal interval turns the line about its middle, where coarse stamps know it best.
  const middle = (raw.sampleCount - 1) / 2;
  const startS =
    intervalS === raw.intervalS * factor
      ? raw.startS * factor
      : raw.isCoarse
        ? (raw.startS + middle * raw.intervalS) * factor - middle * intervalS
        : raw.startS * factor;
  return { timeBase: { ...raw, startS, intervalS }, notices };
}

function fromInterval(
  witnesses: TimeWitnesses,
  intervalS: number | null,
): { timeBase: TimeBase; notices: Notice[] } {
  const { axis, stamps, rowCount, settings, lineOfRow, keptOnChange } = witnesses;
  if (intervalS === null) {
    throw new MeasureError('time.none', "The file doesn't say how fast it was sampled.", {
      expected: 'a column of times, or a sampling interval or sample rate above the rows',
      received: axis.kind === 'index' ? 'numbered rows' : 'values alone',
      advice: "give the scope's sample rate with --sample-rate, such as --sample-rate 100000",
    });
  }
  if (stamps === null) {
    const startS = settings.startS ?? 0;
    const arrangement = { kind: 'as read' } as const;
    return {
      timeBase: { startS, intervalS, sampleCount: rowCount, arrangement, isCoarse: false },
      notices: [],
    };
  }
  const numbered = stampedTimeBase(stamps, INDEX_RESOLUTION, lineOfRow, keptOnChange);
  // Numbers from 0 or 1 say nothing of the trigger; negative ones count from it.
  const startS = settings.startS ?? Math.min(0, numbered.startS) * intervalS;
  return { timeBase: { ...numbered, startS, intervalS: numbered.intervalS * intervalS }, notices: [] };
}
