import { resampleLinearly } from './resampleLinearly.ts';
import type { TimeBase } from './rowArrangement.ts';

/**
 * A channel's rows as evenly spaced samples.
 *
 * @param values - one a row, NaN where missing. Not changed; returned itself where rows are samples.
 * @returns shape timeBase.sampleCount, NaN in gaps.
 */
export function arrangeSamples(
  values: Float64Array,
  timeBase: TimeBase,
  stamps: Float64Array | null,
): Float64Array {
  const { arrangement, sampleCount } = timeBase;
  switch (arrangement.kind) {
    case 'as read':
      return values;
    case 'placed':
    case 'held': {
      const { rowOfSample } = arrangement;
      return Float64Array.from(rowOfSample, (row) => (row < 0 ? Number.NaN : values[row]!));
    }
    case 'resampled': {
      const present = stamps === null ? values : values.filter((_, row) => !Number.isNaN(stamps[row]!));
      return resampleLinearly(arrangement.offsetsS, present, timeBase.intervalS, sampleCount);
    }
  }
}
