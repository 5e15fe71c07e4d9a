import { expect, test } from 'vitest';
import { printedResolution } from '../../../src/read/text/columnDigits.ts';
import { splitCells } from '../../../src/read/text/dialect.ts';
import { cleanText, lineAt, sampleLines } from '../../../src/read/text/textAccess.ts';

test('lineAt(text, from) ends a line at line feed, carriage return, or the pair', () => {
  expect(lineAt('ab\ncd', 0)).toEqual({ to: 2, next: 3 });
  expect(lineAt('ab\rcd', 0)).toEqual({ to: 2, next: 3 });
  expect(lineAt('ab\r\ncd', 0)).toEqual({ to: 2, next: 4 });
  expect(lineAt('ab\r\ncd', 4)).toEqual({ to: 6, next: 6 });
});

test('sampleLines(text, most) takes all of a short text and spreads over a long one', () => {
  expect(sampleLines('a\n\nb\r\nc', 400)).toEqual(['a', 'b', 'c']);
  const long = Array.from({ length: 10000 }, (_, i) => `line ${i}`).join('\n');
  const sampled = sampleLines(long, 100);
  expect(sampled.length).toBeGreaterThan(80);
  expect(sampled.length).toBeLessThanOrEqual(101);
  expect(sampled.every((line) => /^line \d+$/.test(line))).toBe(true);
  expect(Number(sampled.at(-1)!.slice(5))).toBeGreaterThan(9800);
});

test('splitCells(line, delimiter) keeps empty cells except between blanks, and reads quotes', () => {
  expect(splitCells(' 1 ,,"a, b",', ',')).toEqual(['1', '', 'a, b', '']);
  expect(splitCells('  1 \t 2', 'blanks')).toEqual(['1', '2']);
  expect(splitCells('1\t\t2', '\t')).toEqual(['1', '', '2']);
});

test('splitCells(line, delimiter) splits a line whose quotes do not close', () => {
  expect(splitCells('"a,b,c', ',')).toEqual(['a', 'b', 'c']);
  expect(splitCells('5" disk,b', ',')).toEqual(['5" disk', 'b']);
});

test('printedResolution(token) is the value of the last digit', () => {
  // Powers of ten: 10 ** -4 is the double nearest to 1e-4, give or take its last bit.
  for (const [token, resolution] of [
    ['-0.0200', 1e-4],
    ['1.25E-03', 1e-5],
    ['12', 1],
    ['0,5', 0.1],
    ['+3.e2', 100],
  ] as const) {
    expect(Math.abs(printedResolution(token) / resolution - 1)).toBeLessThan(1e-15);
  }
  expect(printedResolution('nan')).toBe(0);
});

test('cleanText(text, most) shows control characters as a mark and shortens', () => {
  expect(cleanText('a\u0000b\u001b[31m  c')).toBe('a\ufffdb\ufffd[31m c');
  expect(cleanText('abcdefgh', 5)).toBe('abcd…');
});
