import { MeasureError } from '../../base/measureError.ts';

/** Of the channel's span: how far a sample may lie from the straight line between its neighbours. */
const LARGEST_BEND = 0.02;

/**
 * Refuses to resample where straight lines between the samples would invent the wave.
 *
 * What is honest: each sample is foretold from its two neighbours. Where that misses by at most 2 % of the
 * span, no place in the record bends more between neighbours twice as far apart as those that are really
 * used, so the lines miss by about a quarter of that, half a per cent. It does not hold for rows kept only
 * where the value changed: across a plateau the line would turn the edge behind it into a ramp, and the
 * last sample of the plateau is missed by the whole edge.
 *
 * @param timesS - shape N, ascending.
 * @param values - shape N, NaN where missing.
 * @returns the largest miss, as a share of the span, 0 and up.
 * @throws MeasureError `time.uneven`.
 */
export function checkResampling(timesS: Float64Array, values: Float64Array, name: string): number {
  let least = Number.POSITIVE_INFINITY;
  let largest = Number.NEGATIVE_INFINITY;
  let miss = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (value < least) least = value;
    if (value > largest) largest = value;
    const before = timesS[i]! - (timesS[i - 1] ?? Number.NaN);
    const width = (timesS[i + 1] ?? Number.NaN) - timesS[i]! + before;
    const foretold = values[i - 1]! + ((values[i + 1]! - values[i - 1]!) * before) / width;
    const off = Math.abs(value - foretold);
    if (off > miss) miss = off;
  }
  const share = largest > least ? miss / (largest - least) : 0;
  if (share > LARGEST_BEND) {
    throw new MeasureError(
      'time.uneven',
      `The samples of ${name} are unevenly spaced in time, too far apart to fill in.`,
      {
        expected: 'samples at even intervals',
        received: 'rows at uneven times',
        advice: 'save every sample: switch off any saving of changed values only, and any variable time step',
      },
    );
  }
  return share;
}
