import { type Dialect, splitCells } from './dialect.ts';
import { holdsNumberOrMissing, parseNumber } from './parseNumber.ts';

/** In order of preference where two explain the rows equally well. */
const CANDIDATES: readonly Dialect[] = [
  { delimiter: ',', decimalMark: '.' },
  { delimiter: '\t', decimalMark: '.' },
  { delimiter: ';', decimalMark: '.' },
  { delimiter: '|', decimalMark: '.' },
  { delimiter: 'blanks', decimalMark: '.' },
  { delimiter: ';', decimalMark: ',' },
  { delimiter: '\t', decimalMark: ',' },
  { delimiter: '|', decimalMark: ',' },
  { delimiter: 'blanks', decimalMark: ',' },
  // Only quoted cells can be read with this one.
  { delimiter: ',', decimalMark: ',' },
];

interface Reading {
  /** Sum over the lines of numbers, not words, of the share of cells that are numbers. */
  readonly score: number;
  /** Numbers in those lines, and in the others. */
  readonly numbers: number;
  readonly strayNumbers: number;
}

/**
 * Delimiter and decimal mark: the pair under which the largest share of cells are numbers, then the
 * most numbers. The delimiter alone never decides the mark, nor a header line either of them.
 *
 * @param lines - lines spread over the file, so that most are rows of numbers.
 * @returns null where no line holds a number under any pair.
 */
export function detectDialect(lines: readonly string[]): Dialect | null {
  let best: { dialect: Dialect; reading: Reading } | null = null;
  for (const dialect of CANDIDATES) {
    const reading = readUnder(lines, dialect);
    if (reading.numbers + reading.strayNumbers === 0) continue;
    if (best === null || explainsMore(reading, best.reading)) best = { dialect, reading };
  }
  if (best === null) return null;
  return isSplitDecimal(lines, best.dialect) ? { delimiter: ';', decimalMark: ',' } : best.dialect;
}

function readUnder(lines: readonly string[], dialect: Dialect): Reading {
  let score = 0;
  let numbers = 0;
  let strayNumbers = 0;
  for (const line of lines) {
    const cells = splitCells(line, dialect.delimiter).filter((cell) => cell !== '');
    if (!cells.some((cell) => parseNumber(cell, dialect.decimalMark) !== null)) continue;
    // A mark for a missing number fits as well as the number would.
    const count = cells.filter((cell) => holdsNumberOrMissing(cell, dialect.decimalMark)).length;
    // A sentence with a number in it is no row, whatever parts its words.
    if (count > cells.length / 2) {
      score += count / cells.length;
      numbers += count;
    } else strayNumbers += count;
  }
  return { score, numbers, strayNumbers };
}

function explainsMore(a: Reading, b: Reading): boolean {
  // Shares summed in floating point: a difference below a thousandth of a line is none.
  if (Math.abs(a.score - b.score) > 1e-3) return a.score > b.score;
  if (a.numbers !== b.numbers) return a.numbers > b.numbers;
  // Rows that are half words, such as a clock time and a value, are all there is.
  return a.numbers === 0 && a.strayNumbers > b.strayNumbers;
}

/**
 * One column of values with decimal commas looks like two columns of whole numbers. `-0` and zeros in
 * front of the second part give it away.
 */
function isSplitDecimal(lines: readonly string[], dialect: Dialect): boolean {
  if (dialect.delimiter !== ',' || dialect.decimalMark !== '.') return false;
  const rows = lines.filter((line) => /^\s*[+-]?\d+,\d+\s*$/.test(line));
  return rows.length > lines.length / 2 && rows.some((line) => /^\s*-0,|,0\d/.test(line));
}
