import { type ChosenColumns, chooseColumns } from '../columns/chooseColumns.ts';
import type { ColumnTrend } from '../columns/columnTrend.ts';
import { layColumns } from '../columns/layColumns.ts';
import { timeSettings } from '../head/timeSettings.ts';
import type { FileLayout } from './fileLayout.ts';

/**
 * Which columns of a file are its axis and its channels.
 *
 * @param trends - of the table's columns, in order.
 * @param values - the columns themselves; looked at only where several are times.
 * @returns also how many blocks of columns the table has, each with a time of its own.
 * @throws MeasureError `file.spectrum`.
 */
export function chosenColumns(
  { table, head, sampleRateHz }: FileLayout,
  trends: readonly ColumnTrend[],
  values: readonly Float64Array[],
): ChosenColumns & { readonly blockCount: number } {
  const hasInterval = timeSettings(head.settings).intervalS !== null || sampleRateHz !== undefined;
  const blocks = layColumns(table, head, trends, hasInterval);
  return { ...chooseColumns(blocks, values, head.textColumnNames), blockCount: blocks.length };
}
