import { isMissingMark, parseNumber } from '../../read/text/parseNumber.ts';
import { type LogUnit, logUnit } from './logUnits.ts';
import { blankStamp } from './stamp.ts';
import { readStamp } from './stamps.ts';

export type CellKind = 'number' | 'stamp' | 'missing' | 'word';

const BYTES_LITERAL = /^b'(.*)'$/;
const WITH_UNIT = /^([+\-\u2212]?[\d.,]*\d[.,]?(?:[eE][+-]?\d+)?)\s*([^\d\s.,;:/-][^\d]{0,12})$/;
const THOUSANDS_POINT = /^[+-]?\d{1,3}(,\d{3})+\.\d+$/;
const THOUSANDS_COMMA = /^[+-]?\d{1,3}(\.\d{3})+,\d+$/;

const scratch = blankStamp();

/** What a cell of a log is, whatever its column. */
export function cellKind(cell: string): CellKind {
  if (cell === '') return 'missing';
  if (logNumber(cell) !== null) return 'number';
  if (readStamp(cell, scratch)) return 'stamp';
  return isNoReading(cell) ? 'missing' : 'word';
}

const NO_READING = /^(unavailable|unknown|offline|error|err|off|no data|missing)$/i;

/** Whether a cell of a column of numbers says that there is none. */
export function isNoReading(cell: string): boolean {
  return cell === '' || isMissingMark(cell) || NO_READING.test(cell.trim());
}

/**
 * A cell as a number: with either decimal mark, in a byte literal, with a unit or a percent sign behind it.
 *
 * @returns null where it is none.
 * @example logNumber('17,055 Wh') // 17.055
 */
export function logNumber(cell: string): number | null {
  const plain = parseNumber(cell, '.');
  if (plain !== null) return plain;
  const bare = withoutLiteral(cell);
  return markedNumber(bare) ?? markedNumber(amountOf(bare)?.[0] ?? '');
}

/** The unit that stands behind the number in a cell; null where none does. */
export function unitInCell(cell: string): LogUnit | null {
  return amountOf(withoutLiteral(cell))?.[1] ?? null;
}

function withoutLiteral(cell: string): string {
  return (BYTES_LITERAL.exec(cell)?.[1] ?? cell).replace(/\\[rnt]/g, '').trim();
}

function markedNumber(token: string): number | null {
  if (token === '') return null;
  if (THOUSANDS_POINT.test(token)) return parseNumber(token.replaceAll(',', ''), '.');
  if (THOUSANDS_COMMA.test(token)) return parseNumber(token.replaceAll('.', ''), ',');
  return parseNumber(token, '.') ?? parseNumber(token, ',');
}

function amountOf(cell: string): readonly [number: string, unit: LogUnit] | null {
  const match = WITH_UNIT.exec(cell);
  const unit = match === null ? null : logUnit(match[2]!);
  return unit === null ? null : [match![1]!, unit];
}
