import type { FoundClock } from './clock.ts';
import type { LogNotice } from './notices.ts';

/** Where the rows of a log stand in time. */
interface PlacedRows {
  readonly timesS: Float64Array;
  readonly partStarts: readonly number[];
  readonly notices: readonly LogNotice[];
}

const MOST_LINES = 3;

/**
 * Times since the first row, in parts: the clock is never sorted. A part of an absolute clock stands where its own
 * stamps say; one of an elapsed clock, which starts anew with each test, behind the part before.
 *
 * @param stampsS - one a row, none missing.
 */
export function placeRows(
  stampsS: Float64Array,
  { kind, stepS }: Pick<FoundClock, 'kind' | 'stepS'>,
  lineOfRow: (row: number) => number,
): PlacedRows {
  const partStarts = [0];
  for (let row = 1; row < stampsS.length; row++) if (stampsS[row]! < stampsS[row - 1]!) partStarts.push(row);
  const timesS = stampsS.slice();
  let spread = 0;
  for (const [part, from] of partStarts.entries()) {
    const to = partStarts[part + 1] ?? stampsS.length;
    spread += spreadEqual(timesS.subarray(from, to), stepS);
    if (kind === 'absolute' || from === 0) continue;
    const usual = (timesS[to - 1]! - timesS[from]!) / Math.max(1, to - 1 - from);
    const shift = timesS[from - 1]! + usual - timesS[from]!;
    for (let row = from; row < to; row++) timesS[row]! += shift;
  }
  const start = timesS[0]!;
  for (let row = 0; row < timesS.length; row++) timesS[row]! -= start;
  const back = partStarts.slice(1);
  const notices: LogNotice[] = [];
  if (back.length > 0 && kind === 'absolute')
    notices.push({ code: 'clock.back', lines: back.slice(0, MOST_LINES).map(lineOfRow), times: back.length });
  if (back.length > 0 && kind === 'elapsed')
    notices.push({
      code: 'tests.stacked',
      tests: partStarts.length,
      lines: back.slice(0, MOST_LINES).map(lineOfRow),
    });
  if (spread > 0) notices.push({ code: 'clock.equal', rows: spread, stepS });
  return { timesS, partStarts, notices };
}

/**
 * Spreads rows of one stamp evenly over what the stamp tells apart. The first and the last stamp of a part may have
 * been cut: they have no fewer places than their neighbours have rows.
 *
 * @param times - of one part, never falling; changed.
 * @returns rows that repeat the stamp before.
 */
function spreadEqual(times: Float64Array, stepS: number): number {
  let repeated = 0;
  let previousCount = 0;
  for (let from = 0; from < times.length; ) {
    const stamp = times[from]!;
    let to = from + 1;
    while (to < times.length && times[to] === stamp) to++;
    const count = to - from;
    repeated += count - 1;
    const room = Math.min(stepS, (times[to] ?? Number.POSITIVE_INFINITY) - stamp);
    const isFirst = from === 0;
    const places = Math.max(count, isFirst ? equalFrom(times, to) : to === times.length ? previousCount : 0);
    // A first stamp that was cut lost its first rows, a last one its last.
    const skipped = isFirst ? places - count : 0;
    if (places > 1) for (let k = 0; k < count; k++) times[from + k] = stamp + ((skipped + k) * room) / places;
    previousCount = count;
    from = to;
  }
  return repeated;
}

function equalFrom(times: Float64Array, from: number): number {
  let to = from;
  while (to < times.length && times[to] === times[from]) to++;
  return to - from;
}

/** The rows that have a stamp, ascending; null: all have. */
export function stampedRows(stampsS: Float64Array): Int32Array | null {
  let missing = 0;
  for (const stamp of stampsS) if (Number.isNaN(stamp)) missing++;
  if (missing === 0) return null;
  const rows = new Int32Array(stampsS.length - missing);
  let count = 0;
  for (let row = 0; row < stampsS.length; row++) if (!Number.isNaN(stampsS[row]!)) rows[count++] = row;
  return rows;
}
