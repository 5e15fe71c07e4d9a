/** The running integral of the square of a record. */
export interface SquareIntegral {
  /**
   * Mean of v² between two positions in samples, not rounded, 0 ≤ from < to ≤ N − 1; null where more than a
   * fiftieth of it is missing.
   */
  mean(from: number, to: number): number | null;
}

/**
 * ∫v², ready to be read between any two positions.
 *
 * Between samples v² runs straight, so the integral is the trapezoid rule with ends inside an interval; for a
 * smooth wave over its whole cycle that is exact to (ωh)², times what v² is at the ends.
 *
 * @param samples - shape N; NaN marks a missing sample, bridged by a straight line in v. Not changed.
 */
export function squareIntegral(samples: Float64Array): SquareIntegral {
  const squares = bridgedSquares(samples);
  const integral = new Float64Array(samples.length);
  const missing = new Uint32Array(samples.length + 1);
  for (let n = 0; n < samples.length; n++) {
    if (n > 0) integral[n] = integral[n - 1]! + (squares[n - 1]! + squares[n]!) / 2;
    missing[n + 1] = missing[n]! + (Number.isNaN(samples[n]!) ? 1 : 0);
  }
  const upTo = (position: number): number => {
    const n = Math.min(samples.length - 2, Math.floor(position));
    const share = position - n;
    return integral[n]! + share * (squares[n]! + (share / 2) * (squares[n + 1]! - squares[n]!));
  };
  return {
    mean(from, to) {
      const absent = missing[Math.floor(to) + 1]! - missing[Math.ceil(from)]!;
      return absent > (to - from) / 50 ? null : (upTo(to) - upTo(from)) / (to - from);
    },
  };
}

/** v², its gaps bridged by straight lines in v; 0 before the first present sample and after the last. */
function bridgedSquares(samples: Float64Array): Float64Array {
  const squares = new Float64Array(samples.length);
  let last = -1;
  for (let n = 0; n < samples.length; n++) {
    const value = samples[n]!;
    if (Number.isNaN(value)) continue;
    for (let gap = last + 1; last >= 0 && gap < n; gap++) {
      const share = (gap - last) / (n - last);
      squares[gap] = (samples[last]! + share * (value - samples[last]!)) ** 2;
    }
    squares[n] = value * value;
    last = n;
  }
  return squares;
}
