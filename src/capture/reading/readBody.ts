import type { MalformedRow } from '../../bytes/scanRows.ts';
import type { StampRun } from '../time/stampRun.ts';
import type { ReadingPlan } from './readingPlan.ts';
import type { NumberedChunk } from './readShare.ts';
import type { ScanBoard } from './scanBoard.ts';

/** All rows of a file but those of its tail, and room behind them for those. */
export interface ReadBody {
  readonly rowCount: number;
  readonly lineCount: number;
  /** One array for each of the table's columns, with room for the tail's rows; null where a column is not kept. */
  readonly columns: readonly (Float64Array | null)[];
  /** Rows of the body and lines of the file. */
  readonly malformed: readonly MalformedRow[];
  /** For each line without content: how many rows stand before it. */
  readonly rowsBeforeEmptyLines: readonly number[];
  readonly stamps: readonly StampRun[];
  readonly isUtf8: boolean;
}

/** Puts together what the threads read. @param chunks - all of them, in any order. */
export function readBody(plan: ReadingPlan, board: ScanBoard, chunks: readonly NumberedChunk[]): ReadBody {
  const malformed: MalformedRow[] = [];
  const rowsBeforeEmptyLines: number[] = [];
  const stamps: StampRun[] = [];
  let rowCount = 0;
  let lineCount = 0;
  for (const chunk of [...chunks].sort((a, b) => a.chunk - b.chunk)) {
    for (const { row, line, text } of chunk.malformed) {
      malformed.push({ row: rowCount + row, line: plan.layout.table.bodyLine + lineCount + line, text });
    }
    for (const rows of chunk.rowsBeforeEmptyLines) rowsBeforeEmptyLines.push(rowCount + rows);
    if (chunk.stamps !== null) stamps.push(chunk.stamps);
    rowCount += chunk.rowCount;
    lineCount += chunk.lineCount;
  }
  const isUtf8 = chunks.every((chunk) => chunk.isUtf8);
  return { rowCount, lineCount, columns: board.columns, malformed, rowsBeforeEmptyLines, stamps, isUtf8 };
}
