import { isMissingMark } from './isMissingMark.ts';
import { lineAt } from './lineAt.ts';
import { parseNumber } from './parseNumber.ts';
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
}

export interface ScannedRows {
  readonly rowCount: number;
  /** One array a column, shape rowCount; NaN where the cell is blank, missing or malformed. */
  readonly columns: readonly Float64Array[];
  readonly malformed: readonly MalformedRow[];
  /** The 1-based line of the file where a row stands. */
  readonly lineOfRow: (row: number) => number;
  /** Whether the text's last line has no line end, so that the row may have been cut. */
  readonly isOpenEnded: boolean;
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
  const last = text.charCodeAt(text.length - 1);
  return {
    rowCount: store.rowCount,
    columns: store.columns(),
    malformed,
    lineOfRow: (row) => bodyLine + row + rowsBeforeEmptyLines.filter((before) => before <= row).length,
    isOpenEnded: last !== 10 && last !== 13,
  };
}

/** Fills `values` from the cells; false where a core column holds neither number, blank nor missing mark. */
function readCells(cells: readonly string[], table: TableShape, values: Float64Array): boolean {
  const { columns, core, dialect } = table;
  return columns.every((column, k) => {
    const cell = cells[column];
    const value = cell === undefined ? null : parseNumber(cell, dialect.decimalMark);
    values[k] = value ?? Number.NaN;
    return value !== null || !core.includes(column) || (cell !== undefined && isMissingMark(cell));
  });
}
