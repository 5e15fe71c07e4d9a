import { describe, expect, it } from 'vitest';
import { advanceWidths } from '../../../src/draw/paper/advanceWidths.ts';
import { fontTable } from './fontTable.ts';

describe('advanceWidths', () => {
  it.each([
    [400, '400Regular'],
    [600, '600SemiBold'],
  ] as const)('holds the widths of the shipped font at weight %i', (weight, folder) => {
    expect(advanceWidths[weight]).toEqual(fontTable(folder));
  });

  it('has digits of one width, so that columns of numbers stand', () => {
    for (const weight of [400, 600] as const) {
      const digits = advanceWidths[weight][0]!.widths.slice(0x30 - 0x20, 0x3a - 0x20);
      expect(new Set(digits).size).toBe(1);
    }
  });
});
