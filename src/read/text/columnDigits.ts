import { decimalExponent, powerOfTen } from '../../base/elementary.ts';
import type { TableShape } from '../table/table.ts';
import { splitCells } from './dialect.ts';
import { isNoValueNumber } from './parseNumber.ts';
import { sampleLines, type TextAccess } from './textAccess.ts';

/** How a column prints its numbers: with so many digits, and with none below a place. */
export interface ColumnDigits {
  /** Significant digits of each number; infinite where all have the same number of decimals. */
  readonly significant: number;
  /** The value of the last digit of the finest cell; 0 where none shows one. */
  readonly finest: number;
  /**
   * That of the finest among the large numbers, half of the largest and up; 0 where none shows one. An exponent makes
   * small numbers finer, and some writers drop zeros at the end.
   */
  readonly resolution: number;
}

const SAMPLE_LINES = 64;
/** The last rows, where a rising column prints its largest numbers. */
const TAIL_LENGTH = 1024;

/**
 * How many digits a column prints, learnt from rows spread over the body and from its last.
 *
 * @param column - 0-based column of the file.
 */
export function columnDigits(text: TextAccess, table: TableShape, column: number): ColumnDigits {
  const tail = text.slice(Math.max(table.bodyFrom, text.length - TAIL_LENGTH), text.length);
  const lines = [
    ...sampleLines(text, SAMPLE_LINES, table.bodyFrom),
    // The tail may start inside a row, and end in one.
    ...tail.split(/[\r\n]+/).slice(1, -1),
  ];
  let significant = 0;
  let finest = Number.POSITIVE_INFINITY;
  /** The finest last digit among numbers of one power of ten. */
  const finestOf = new Map<number, number>();
  const cells: { readonly size: number; readonly resolution: number }[] = [];
  for (const line of lines) {
    const token = splitCells(line, table.dialect.delimiter)[column] ?? '';
    const resolution = printedResolution(token);
    const value = Number(token.replace(',', '.'));
    // A bare 0 of a writer that drops zeros says nothing.
    if (resolution === 0 || Number.isNaN(value) || isNoValueNumber(value) || value === 0) continue;
    significant = Math.max(significant, significantDigits(token));
    finest = Math.min(finest, resolution);
    cells.push({ size: Math.abs(value), resolution });
    const exponent = decimalExponent(value);
    finestOf.set(exponent, Math.min(resolution, finestOf.get(exponent) ?? resolution));
  }
  if (finestOf.size === 0) return { significant: 0, finest: 0, resolution: 0 };
  const largest = [...finestOf.keys()].reduce((a, b) => Math.max(a, b));
  const isFixed = finestOf.get(largest) === finest;
  const halfSize = cells.reduce((most, { size }) => Math.max(most, size), 0) / 2;
  const large = cells.filter(({ size }) => size >= halfSize);
  const resolution = large.reduce(
    (least, cell) => Math.min(least, cell.resolution),
    Number.POSITIVE_INFINITY,
  );
  return { significant: isFixed ? Number.POSITIVE_INFINITY : significant, finest, resolution };
}

/** Digits of the mantissa from the first that isn't zero on. */
function significantDigits(token: string): number {
  const [mantissa = ''] = token.split(/e/i);
  return mantissa.replace(/\D/g, '').replace(/^0+/, '').length;
}

/**
 * The value of the last printed digit of a number: `-0.0200` has 1e-4, `1.25E-03` has 1e-5, `12` has 1.
 *
 * @param token - a number as a file writes it, with either decimal mark.
 * @returns positive; 0 where the token is no number.
 */
export function printedResolution(token: string): number {
  const match = /^[+-]?\d*(?:[.,](\d*))?(?:[eE]([+-]?\d+))?$/.exec(token.trim());
  if (match === null) return 0;
  return powerOfTen(Number(match[2] ?? 0) - (match[1] ?? '').length);
}
