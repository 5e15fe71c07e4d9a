/**
 * Mean of v·i over the last whole cycles of a stretch, W.
 *
 * @param volts - shape N; NaN marks a missing sample.
 * @param amperes - shape N, on the same time base.
 * @param span - in samples; over more than `most` cycles only the last count.
 * @returns null where no half cycle is whole, or all of them are missing.
 */
export function activePower(
  volts: Float64Array,
  amperes: Float64Array,
  span: { readonly from: number; readonly to: number },
  periodSamples: number,
  most = 50,
): number | null {
  const halves = Math.min(2 * most, Math.floor((2 * (span.to - span.from)) / periodSamples));
  // Of an odd number of half cycles the odd one is left out, unless it is all there is.
  const used = halves > 1 ? halves - (halves % 2) : halves;
  if (used < 1) return null;
  let [sum, count] = [0, 0];
  const to = Math.floor(span.to);
  for (let n = Math.max(0, Math.round(span.to - (used * periodSamples) / 2)); n < to; n++) {
    const watts = volts[n]! * amperes[n]!;
    if (Number.isNaN(watts)) continue;
    sum += watts;
    count++;
  }
  return count === 0 ? null : sum / count;
}
