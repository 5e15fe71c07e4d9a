import { expect, test } from 'vitest';
import { scanChunk } from '../../../src/read/table/scanRows.ts';

const plan = {
  table: {
    dialect: { delimiter: ',', decimalMark: '.' },
    columns: [0, 1],
    core: [0, 1],
    looseFrom: 2,
    closedWidth: 0,
  },
  encoding: 'utf-8',
} as const;

test('columns that are too short for the rows grow, and keep what stands in them', () => {
  const rows = Array.from({ length: 30_000 }, (_, i) => (i % 7000 === 6999 ? `${i},x\n` : `${i},-${i}\n`));
  const bytes = new TextEncoder().encode(rows.join(''));
  const target = { columns: [new Float64Array(4), new Float64Array(4)], rowCount: 0 };
  const { rowCount, malformed } = scanChunk(bytes, 0, bytes.length, plan, target);
  expect(rowCount).toBe(30_000);
  expect(malformed.map(({ row }) => row)).toEqual([6999, 13_999, 20_999, 27_999]);
  rows.forEach((_, i) => {
    const isRow = i % 7000 !== 6999;
    expect(target.columns[0]![i]).toBe(isRow ? i : Number.NaN);
    expect(target.columns[1]![i]).toBe(isRow ? -i : Number.NaN);
  });
});
