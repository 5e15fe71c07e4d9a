import type { ReadNotice } from '../notices.ts';
import type { AxisColumn } from './columnRole.ts';
import type { ColumnBlock, ValueColumn } from './layColumns.ts';

/** The columns that are read, on one axis. */
export interface ChosenColumns {
  readonly axis: AxisColumn;
  readonly values: readonly ValueColumn[];
  /** Last file column whose settings are those of this record. */
  readonly keysTo: number;
  readonly notices: readonly ReadNotice[];
}

/**
 * Brings blocks with a time column each on one axis. The same times and other channels: all are read, by
 * the first time column. Other times, or the same channels again: two exports side by side, and only the
 * first is read.
 *
 * @param values - the table's columns, in order.
 * @param textColumnNames - columns of text, said to be left out.
 */
export function chooseColumns(
  blocks: readonly [ColumnBlock, ...ColumnBlock[]],
  values: readonly Float64Array[],
  textColumnNames: readonly string[],
): ChosenColumns {
  const [first, ...others] = blocks;
  const joined = others.filter((block) => hasSameTimes(first, block, values) && hasOtherNames(first, block));
  const isSideBySide = joined.length < others.length;
  const notices: ReadNotice[] = [];
  if (isSideBySide) {
    const exports = 1 + others.length - joined.length;
    notices.push({ code: 'columns.skipped', why: 'side by side', exports });
  }
  if (textColumnNames.length > 0) {
    notices.push({ code: 'columns.skipped', why: 'text', names: textColumnNames });
  }
  const envelopes = [first, ...joined].flatMap((block) => block.values.filter((column) => column.isEnvelope));
  if (envelopes.length > 0) {
    const names = envelopes.map(({ name }) => name);
    notices.push({ code: 'columns.skipped', why: 'envelope', names });
  }
  return {
    axis: first.axis,
    values: [first, ...joined].flatMap((block) => block.values),
    keysTo: isSideBySide
      ? (first.values[0]?.place.keysTo ?? Number.POSITIVE_INFINITY)
      : Number.POSITIVE_INFINITY,
    notices,
  };
}

function hasOtherNames(first: ColumnBlock, block: ColumnBlock): boolean {
  const taken = new Set(first.values.map((column) => column.name));
  return block.values.every((column) => column.name === '' || !taken.has(column.name));
}

/** Whether the stamps of two time columns lie within half an interval of each other in every row. */
function hasSameTimes(a: ColumnBlock, b: ColumnBlock, values: readonly Float64Array[]): boolean {
  if (a.axis.column === null || b.axis.column === null) return false;
  const [stampsA, stampsB] = [values[a.axis.column.index]!, values[b.axis.column.index]!];
  const [factorA, factorB] = [a.axis.column.unit?.factor ?? 1, b.axis.column.unit?.factor ?? 1];
  const lastRow = stampsA.length - 1;
  const intervalS = (factorA * Math.abs(stampsA[lastRow]! - stampsA[0]!)) / Math.max(1, lastRow);
  for (let row = 0; row < stampsA.length; row++) {
    const [timeA, timeB] = [factorA * stampsA[row]!, factorB * stampsB[row]!];
    if (Number.isNaN(timeA) !== Number.isNaN(timeB)) return false;
    if (Math.abs(timeA - timeB) > intervalS / 2) return false;
  }
  return true;
}
