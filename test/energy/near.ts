import { expect } from 'vitest';
import type { Figure } from '../../src/base/figure.ts';

/** A figure lies within so much of what is true. */
export function near(figure: Figure | undefined, truth: number, within: number): void {
  expect(figure).toMatchObject({ value: expect.any(Number) });
  expect(Math.abs(figure!.value! - truth)).toBeLessThanOrEqual(within);
}
