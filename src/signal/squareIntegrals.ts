/** ∫v² over each stretch between neighbouring positions. */
interface SquareIntegrals {
  /** In the unit of the samples squared, times samples. */
  readonly integrals: Float64Array;
  /** How many samples of each stretch are missing. */
  readonly missing: Uint32Array;
}

/**
 * The integral of v² between positions that need not be whole.
 *
 * Between samples v² runs straight, so this is the trapezoid rule with ends inside an interval: for a smooth
 * wave over its whole cycle it is exact but for (ωh)² of what v² is at the ends.
 *
 * @param samples - shape N, N ≥ 2; NaN marks a missing sample, bridged by a straight line in v. Not changed.
 * @param positions - in samples, ascending; shape M. Beyond 0 and N − 1 v² counts as nothing.
 * @returns shape M − 1.
 * @example squareIntegrals(Float64Array.of(2, 2, 2), Float64Array.of(0, 0.5, 2)).integrals // 2, 6
 */
export function squareIntegrals(samples: Float64Array, positions: Float64Array): SquareIntegrals {
  const count = Math.max(0, positions.length - 1);
  const integrals = new Float64Array(count);
  const missing = new Uint32Array(count);
  for (let m = 0; m < count; m++) {
    const from = Math.max(0, positions[m]!);
    const to = Math.min(samples.length - 1, positions[m + 1]!);
    let at = from;
    let square = squareAt(samples, at);
    let sum = 0;
    const [first, last] = [Math.ceil(from), Math.floor(to)];
    if (last > first) {
      // The usual case, without a look for gaps at each sample.
      const whole = trapezoids(samples, first, last);
      if (Number.isNaN(whole)) missing[m] = missingBetween(samples, first, last);
      else {
        sum = ((square + samples[first]! ** 2) / 2) * (first - from) + whole;
        [at, square] = [last, samples[last]! ** 2];
      }
    } else if (last === first && Number.isNaN(samples[first]!)) missing[m] = 1;
    while (at < to) {
      const next = Math.min(to, Math.floor(at) + 1);
      const following = squareAt(samples, next);
      sum += ((square + following) / 2) * (next - at);
      [at, square] = [next, following];
    }
    integrals[m] = sum;
  }
  return { integrals, missing };
}

/** ∫v² between two samples; NaN where one is missing. */
function trapezoids(samples: Float64Array, first: number, last: number): number {
  let sum = (samples[first]! ** 2 + samples[last]! ** 2) / 2;
  for (let n = first + 1; n < last; n++) sum += samples[n]! * samples[n]!;
  return sum;
}

function missingBetween(samples: Float64Array, first: number, last: number): number {
  let missing = 0;
  for (let n = first; n <= last; n++) if (Number.isNaN(samples[n]!)) missing++;
  return missing;
}

/** v² at a position, on the straight line in v² between two samples. */
function squareAt(samples: Float64Array, position: number): number {
  const n = Math.floor(position);
  const here = presentAt(samples, n) ** 2;
  return position === n ? here : here + (position - n) * (presentAt(samples, n + 1) ** 2 - here);
}

/** The sample, or the straight line across the gap it lies in; 0 where the gap reaches the record's end. */
function presentAt(samples: Float64Array, n: number): number {
  if (!Number.isNaN(samples[n]!)) return samples[n]!;
  let [before, after] = [n, n];
  while (before >= 0 && Number.isNaN(samples[before]!)) before--;
  while (after < samples.length && Number.isNaN(samples[after]!)) after++;
  if (before < 0 || after === samples.length) return 0;
  const share = (n - before) / (after - before);
  return samples[before]! + share * (samples[after]! - samples[before]!);
}
