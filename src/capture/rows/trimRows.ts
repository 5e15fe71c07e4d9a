import type { MalformedRow, ScannedRows } from '../../bytes/scanRows.ts';

/** The rows worth reading: how many of the scanned ones, and what was dropped at the end. */
export interface TrimmedRows {
  readonly rowCount: number;
  readonly malformed: readonly MalformedRow[];
  /** Lines dropped at the end because they were cut or are no rows; 0 where none was. */
  readonly droppedCount: number;
}

/**
 * Drops what stands behind the last whole row: a row that was cut when the file was, text below the
 * table, rows of blanks.
 *
 * @param isCut - whether the last row lost its end.
 * @param kept - columns that are read; a row blank in all of them is none.
 */
export function trimRows(scanned: ScannedRows, isCut: boolean, kept: readonly Float64Array[]): TrimmedRows {
  const malformedRows = new Set(scanned.malformed.map((row) => row.row));
  let rowCount = scanned.rowCount;
  let droppedCount = 0;
  if (isCut && rowCount > 0 && !malformedRows.has(rowCount - 1)) {
    rowCount--;
    droppedCount++;
  }
  for (; rowCount > 0; rowCount--) {
    const last = rowCount - 1;
    if (malformedRows.has(last)) droppedCount++;
    else if (!kept.every((column) => Number.isNaN(column[last]!))) break;
  }
  return { rowCount, malformed: scanned.malformed.filter((row) => row.row < rowCount), droppedCount };
}
