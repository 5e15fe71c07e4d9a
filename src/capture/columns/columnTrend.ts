import { countsUp, unwrapCount } from './countsUp.ts';
import { risesEvenly } from './risesEvenly.ts';

/** What the numbers of a column say of it as an axis; looked at only where no header tells. */
export interface ColumnTrend {
  readonly countsUp: () => boolean;
  readonly risesEvenly: () => boolean;
  /** Whether it counts and starts anew whenever its counter is full. */
  readonly isCounter: () => boolean;
}

/** @param values - one a row, NaN where missing. */
export function columnTrend(values: Float64Array): ColumnTrend {
  return {
    countsUp: () => countsUp(values),
    risesEvenly: () => risesEvenly(values),
    isCounter: () => unwrapCount(values.slice(), []) !== null,
  };
}
