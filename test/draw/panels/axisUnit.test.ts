import { describe, expect, it } from 'vitest';
import { axisUnit } from '../../../src/draw/panels/axes.ts';

describe('axisUnit', () => {
  it.each([
    [170, 'V', 1],
    [0.012, 'V', 1],
    [9999, 'V', 1],
    [15_000, 'kV', 1e3],
    [1.7e6, 'kV', 1e3],
    [2.1e6, 'MV', 1e6],
    [0.009, 'mV', 1e-3],
    [1.6e-4, 'µV', 1e-6],
    [1e-9, 'V', 1],
    [1e13, 'V', 1],
  ])('an axis that reaches %d V is read in %s', (reach, unit, size) => {
    expect(axisUnit(reach, 'V')).toEqual({ unit, size });
  });
});
