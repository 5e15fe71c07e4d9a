import { describe, expect, it } from 'vitest';
import { extentOf, tracePath } from '../../../src/draw/panels/drawCurve.ts';

describe('tracePath', () => {
  it('goes through every sample and stops at a gap', () => {
    const x = Float64Array.of(0, 1, 2, 3, 4);
    expect(tracePath(x, Float64Array.of(1, 2, Number.NaN, 3, 4))).toBe('M0,1L1,2M3,3L4,4');
  });

  it('keeps the extremes of a column that holds many samples', () => {
    const count = 100_000;
    const x = Float64Array.from({ length: count }, (_, i) => (10 * i) / count);
    const y = Float64Array.from({ length: count }, (_, i) => Math.sin(i));
    y[43_210] = 7;
    y[67_890] = -9;
    const path = tracePath(x, y);
    const points = [...path.matchAll(/,(-?[\d.]+)/g)].map(([, value]) => Number(value));
    expect(points.length).toBeLessThanOrEqual(4 * 10);
    expect(Math.max(...points)).toBe(7);
    expect(Math.min(...points)).toBe(-9);
  });

  it('is empty for no samples', () => {
    expect(tracePath(new Float64Array(), new Float64Array())).toBe('');
  });
});

describe('extentOf', () => {
  it('spans all arrays, skipping gaps', () => {
    expect(extentOf(Float64Array.of(1, Number.NaN, 3), Float64Array.of(-2))).toEqual([-2, 3]);
    expect(extentOf(Float64Array.of(Number.NaN))).toEqual([-1, 1]);
  });
});
