import { type ColumnDigits, columnDigits } from '../../bytes/columnDigits.ts';
import type { Encoding } from '../../bytes/detectEncoding.ts';
import { endsInCutRow } from '../../bytes/endsInCutRow.ts';
import { locateTable } from '../../bytes/locateTable.ts';
import type { TableShape } from '../../bytes/table.ts';
import type { TextAccess } from '../../bytes/textAccess.ts';
import { type Head, readHead } from '../head/readHead.ts';

/** What is known of a file before its rows are read. */
export interface FileLayout {
  readonly encoding: Encoding;
  readonly table: TableShape;
  readonly head: Head;
  /** Whether the last row lost its end. */
  readonly isCut: boolean;
  /** How a column prints its numbers. @param column - 0-based column of the file. */
  readonly digitsOf: (column: number) => ColumnDigits;
  /** Given by the person, for a file that has no time. */
  readonly sampleRateHz: number | undefined;
}

/**
 * Learns a file's layout from its first lines, lines spread over it, and its last.
 *
 * @throws MeasureError `rows.none`.
 */
export function fileLayout(
  text: TextAccess,
  encoding: Encoding,
  sampleRateHz: number | undefined,
): FileLayout {
  const table = locateTable(text);
  return {
    encoding,
    table,
    head: readHead(table),
    isCut: endsInCutRow(text, table),
    digitsOf: (column) => columnDigits(text, table, column),
    sampleRateHz,
  };
}
