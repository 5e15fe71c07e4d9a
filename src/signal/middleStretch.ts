import { log2 } from '../base/elementary/log2.ts';
import { middleRange } from './middleRange.ts';
import type { Residual } from './residual.ts';

/**
 * The longest power of two of samples in the middle of a residual, for a spectrum.
 *
 * @param longest - samples at most.
 * @returns not to be changed: it may be a view.
 */
export function middleStretch(residual: Residual, longest: number): Float64Array {
  const size = 2 ** Math.floor(log2(Math.min(residual.length, longest)));
  const { from, to } = middleRange(residual.length, size);
  return residual.stretch(from, to);
}
