import type { Trace } from '../../verdict/assay.ts';
import { columnExtremes } from './columnExtremes.ts';
import type { CarriedTrace } from './evidence.ts';
import { orNull } from './orNull.ts';
import { roundedTo } from './roundedTo.ts';

/** More than a picture of 1920 pixels shows of the plot. */
const columns = 1000;
const digits = 5;

/** The trace as a sheet carries it: the extremes of wave and residual in each column, rounded. */
export function carryTrace({ timeS, wave, ideal, residual, unit }: Trace): CarriedTrace {
  const kept = columnExtremes(timeS, [wave, residual], columns);
  const at = (values: Float64Array): Float64Array => Float64Array.from(kept, (i) => values[i]!);
  return {
    timeS: roundedTo(at(timeS), digits + 1),
    wave: roundedTo(at(wave), digits).map(orNull),
    ideal: roundedTo(at(ideal), digits),
    unit,
  };
}
