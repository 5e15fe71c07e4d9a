import { countUpTo } from './countUpTo.ts';
import { lineAt } from './lineAt.ts';
import { readCells } from './readCells.ts';
import { RowStore } from './rowStore.ts';
import { scanRegularRow } from './scanRegularRow.ts';
import { splitCells } from './splitCells.ts';
import type { TableShape } from './table.ts';

/** A line inside the body that is no row of numbers. It keeps a row of its own, all values missing. */
export interface MalformedRow {
  /** 0-based row of the body. */
  readonly row: number;
  /** 1-based line of the file. */
  readonly line: number;
  readonly text: string;
  /** Why it is none, in words, where its text alone doesn't show it. */
  readonly reason?: string;
}

export interface ScannedRows {
  readonly rowCount: number;
  /** One array a column, shape rowCount; NaN where the cell is blank, missing or malformed, infinite beyond the range. */
  readonly columns: readonly Float64Array[];
  readonly malformed: readonly MalformedRow[];
  /** The 1-based line of the file where a row stands. */
  readonly lineOfRow: (row: number) => number;
}

/**
 * Reads the rows of numbers of a text to its end: regular rows by a plain scan, any other by splitting
 * the line into cells. Empty lines hold no row.
 *
 * @returns one array for each of the table's columns.
 */
export function scanRows(text: string, table: TableShape): ScannedRows {
  const { dialect, columns, bodyLine } = table;
  const store = new RowStore(columns.length);
  const malformed: MalformedRow[] = [];
  const rowsBeforeEmptyLines: number[] = [];
  const values = new Float64Array(columns.length);
  for (let at = table.bodyFrom, line = bodyLine; at < text.length; line++) {
    const next = scanRegularRow(text, at, dialect, columns, values);
    if (next > 0) {
      store.push(values);
      at = next;
      continue;
    }
    const irregular = lineAt(text, at);
    const content = text.slice(at, irregular.to);
    at = irregular.next;
    if (content.trim() === '') {
      rowsBeforeEmptyLines.push(store.rowCount);
      continue;
    }
    if (!readCells(splitCells(content, dialect.delimiter), table, values)) {
      malformed.push({ row: store.rowCount, line, text: content });
      values.fill(Number.NaN);
    }
    store.push(values);
  }
  return {
    rowCount: store.rowCount,
    columns: store.columns(),
    malformed,
    lineOfRow: (row) => bodyLine + row + countUpTo(rowsBeforeEmptyLines, row),
  };
}
