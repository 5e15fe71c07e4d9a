/** What can happen to a file of rows: takes its lines, header first, and a number from 0 to 1 that says where. */
export type Damage = (lines: readonly string[], where: number) => string;

/** First row of numbers. */
export const FIRST_ROW = 2;

/** A row somewhere inside the table, none of its ends. */
function rowAt(lines: readonly string[], where: number): number {
  return FIRST_ROW + 20 + Math.floor(where * (lines.length - FIRST_ROW - 40));
}

function withRow(change: (row: string, lines: readonly string[], at: number) => readonly string[]): Damage {
  return (lines, where) => {
    const at = rowAt(lines, where);
    return [...lines.slice(0, at), ...change(lines[at]!, lines, at), ...lines.slice(at + 1)].join('\n');
  };
}

/** Damage that breaks a token, a row, a time step or the count of rows. */
export const structural: Readonly<Record<string, Damage>> = {
  'a letter in a number': withRow((row) => [row.replace(/\d(?=[^\d]*$)/, 'x')]),
  'two decimal points': withRow((row) => [row.replace(/(\.\d)(?=[^.]*$)/, '$1.')]),
  'a cell lost': withRow((row) => [row.split(',').slice(0, -1).join(',')]),
  'two rows run together': withRow((row, lines, at) => [row.trimEnd() + lines[at - 1]]),
  'another delimiter': withRow((row) => [row.replaceAll(',', ';')]),
  'a row lost': withRow(() => []),
  'a hundred rows lost': (lines, where) => {
    const at = Math.min(rowAt(lines, where), lines.length - 150);
    return [...lines.slice(0, at), ...lines.slice(at + 100)].join('\n');
  },
  'a row twice': withRow((row) => [row, row]),
  'two rows swapped': (lines, where) => {
    const at = rowAt(lines, where);
    return [...lines.slice(0, at), lines[at + 1], lines[at], ...lines.slice(at + 2)].join('\n');
  },
  'a line of prose': withRow((row) => ['the cat sat on the keyboard', row]),
  'a NUL byte': withRow((row) => [row.replace(/.$/, '\0')]),
  'a line of a million characters': withRow((row) => ['9'.repeat(1_000_000), row]),
  // A row wider than the rest may have been shifted: which of its cells is which nobody knows.
  'cells too many': withRow((row) => [`${row},1.5,2.5`]),
  'ten thousand cells too many': withRow((row) => [row + ',1'.repeat(10_000)]),
};

/** A cell that is a number, and wrong. */
export const wrongValue: Readonly<Record<string, Damage>> = {
  'a value of 1e300': withRow((row) => [row.replace(/[^,]*$/, '1e300')]),
  'a value of 1e9': withRow((row) => [row.replace(/[^,]*$/, '1e9')]),
  'a decimal point lost': withRow((row) => [row.replace(/[^,]*$/, '23712')]),
  'a value of 99999': withRow((row) => [row.replace(/[^,]*$/, '-99999')]),
};

/** The header once more: what follows is another record. */
export const secondHeader: Damage = withRow((row, lines) => [lines[0]!, lines[1]!, row]);
