import type { MeasureError } from '../../base/measureError.ts';
import { readError } from '../readErrors.ts';
import { placeOnGrid } from '../time/arrangeSamples.ts';
import { stampSteps } from '../time/stampedTimeBase.ts';
import type { MalformedRow } from './scanRows.ts';

/** The rows of the first of several records in one file. */
interface Segment {
  /** Rows 0 ≤ row < rowCount belong to it. */
  readonly rowCount: number;
  /** Records found, 1 and up. */
  readonly segmentCount: number;
}

/** A record shorter than this before a restart is none: the time has run back. */
const LEAST_ROWS = 8;
/** Of the mean step: what the time must fall by to have started anew. */
const RESTART_STEPS = 4;
/** Of the mean step: what the time must jump by to have gone on with another record. */
const JUMP_STEPS = 50;

/**
 * Finds where a second record starts: the header stands again, or the time (or number) starts anew.
 *
 * @param stamps - time or number, one a row, NaN where missing; null where the file has none.
 * @param headerText - the last header line, as the file writes it; null where there is none.
 * @param keptOnChange - whether long steps of time are no sign of another record.
 * @throws MeasureError `time.backwards` where the stamps fall and it is no restart.
 */
export function firstSegment(
  rowCount: number,
  stamps: Float64Array | null,
  malformed: readonly MalformedRow[],
  headerText: string | null,
  lineOfRow: (row: number) => number,
  keptOnChange: boolean,
): Segment {
  const headers = malformed.filter((row) => headerText !== null && row.text.trim() === headerText.trim());
  const restarts = stamps === null ? [] : restartRows(stamps, lineOfRow);
  const boundary = Math.min(headers[0]?.row ?? rowCount, restarts[0] ?? rowCount);
  const end = withoutHead(boundary, malformed);
  const jumps = stamps === null || keptOnChange ? [] : jumpRows(stamps.subarray(0, end));
  return {
    rowCount: jumps[0] ?? end,
    segmentCount: 1 + Math.max(headers.length, restarts.length) + jumps.length,
  };
}

/** Lines that aren't rows just above a boundary are the next record's head. */
function withoutHead(boundary: number, malformed: readonly MalformedRow[]): number {
  const rows = new Set(malformed.map((row) => row.row));
  let end = boundary;
  while (rows.has(end - 1)) end--;
  return end;
}

function restartRows(stamps: Float64Array, lineOfRow: (row: number) => number): number[] {
  const restarts: number[] = [];
  let runStart = 0;
  let first = Number.NaN;
  let beforePrevious = Number.NaN;
  let previous = Number.NaN;
  for (let row = 0; row < stamps.length; row++) {
    const stamp = stamps[row]!;
    if (Number.isNaN(stamp)) continue;
    if (stamp < previous) {
      const meanStep = (previous - first) / (row - 1 - runStart);
      const isRestart =
        row - runStart >= LEAST_ROWS &&
        // Else one stamp alone is wrong, and the time goes on behind it.
        stamp < beforePrevious &&
        previous - stamp > RESTART_STEPS * meanStep &&
        rises(stamps, row);
      if (!isRestart) throw runsBack(row, previous, stamp, lineOfRow);
      restarts.push(row);
      runStart = row;
      first = stamp;
    }
    if (Number.isNaN(first)) first = stamp;
    beforePrevious = previous;
    previous = stamp;
  }
  return restarts;
}

/**
 * Rows before which the time jumps ahead, as between records on one clock, too far or too oddly to be rows
 * that went missing.
 */
function jumpRows(stamps: Float64Array): number[] {
  const jumps: number[] = [];
  let first = stamps[0]!;
  let previous = first;
  // Steps of zero don't count: coarse stamps repeat, and then go on by a tick.
  let rises = 0;
  for (let row = 1; row < stamps.length; row++) {
    const stamp = stamps[row]!;
    if (!(stamp > previous)) continue;
    if (rises >= LEAST_ROWS && stamp - previous > (JUMP_STEPS * (previous - first)) / rises) {
      jumps.push(row);
      first = stamp;
      rises = 0;
    } else rises++;
    previous = stamp;
  }
  return jumps.length === 0 || isOnGrid(stamps) ? [] : jumps;
}

function isOnGrid(stamps: Float64Array): boolean {
  return placeOnGrid(stamps, stampSteps(stamps).median, 0) !== null;
}

function rises(stamps: Float64Array, from: number): boolean {
  const run = stamps.subarray(from, from + LEAST_ROWS).filter((stamp) => !Number.isNaN(stamp));
  return run.length > 1 && run.every((stamp, i) => i === 0 || stamp >= run[i - 1]!);
}

function runsBack(
  row: number,
  before: number,
  after: number,
  lineOfRow: (row: number) => number,
): MeasureError {
  return readError('time.backwards', { before, after }, { line: lineOfRow(row) });
}
