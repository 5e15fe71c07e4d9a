import type { MalformedRow, ScannedRows } from '../../bytes/scanRows.ts';
import type { AxisColumn } from '../columns/axisColumn.ts';

/**
 * Rows that read as numbers and yet can't be placed: values without a time or number beside them, or with the
 * number of the row before. What stands in them may belong to another column, so nothing of them is taken.
 *
 * @param values - the columns of values; such rows become missing in them and in the axis column.
 * @returns all malformed rows, these among them.
 */
export function withBrokenRows(
  scanned: ScannedRows,
  { kind, column: axis }: AxisColumn,
  values: readonly Float64Array[],
): ScannedRows {
  if (axis === null) return scanned;
  const stamps = scanned.columns[axis.index]!;
  const known = new Set(scanned.malformed.map(({ row }) => row));
  const broken: MalformedRow[] = [];
  let previous = Number.NaN;
  for (let row = 0; row < scanned.rowCount; row++) {
    const stamp = stamps[row]!;
    const isRepeated = kind === 'index' && stamp === previous;
    if (!Number.isNaN(stamp)) previous = stamp;
    if (!Number.isNaN(stamp) && !isRepeated) continue;
    const value = values.find((column) => !Number.isNaN(column[row]!))?.[row];
    if (known.has(row) || (value === undefined && !isRepeated)) continue;
    const reason = isRepeated
      ? `the number ${stamp} again`
      : `no ${kind === 'index' ? 'number' : 'time'} beside ${value}`;
    broken.push({ row, line: scanned.lineOfRow(row), text: '', reason });
    stamps[row] = Number.NaN;
    for (const column of values) column[row] = Number.NaN;
  }
  if (broken.length === 0) return scanned;
  return { ...scanned, malformed: [...scanned.malformed, ...broken].sort((a, b) => a.row - b.row) };
}
