/** Time as a straight line over rows: stamp ≈ start + row · interval. */
export interface StampLine {
  readonly start: number;
  readonly interval: number;
}

/** The line through the first and the last stamp present; null with fewer than two. */
export function lineThroughEnds(stamps: Float64Array): StampLine | null {
  let first = 0;
  while (first < stamps.length && Number.isNaN(stamps[first]!)) first++;
  let last = stamps.length - 1;
  while (last > first && Number.isNaN(stamps[last]!)) last--;
  if (last <= first) return null;
  const interval = (stamps[last]! - stamps[first]!) / (last - first);
  return { start: stamps[first]! - first * interval, interval };
}

/** The least-squares line over the stamps present: finer than the ends where stamps are coarse. */
export function leastSquaresLine(stamps: Float64Array): StampLine {
  let count = 0;
  let rowSum = 0;
  let stampSum = 0;
  for (let i = 0; i < stamps.length; i++) {
    if (Number.isNaN(stamps[i]!)) continue;
    count++;
    rowSum += i;
    stampSum += stamps[i]!;
  }
  const meanRow = rowSum / count;
  const meanStamp = stampSum / count;
  let covariance = 0;
  let variance = 0;
  for (let i = 0; i < stamps.length; i++) {
    if (Number.isNaN(stamps[i]!)) continue;
    covariance += (i - meanRow) * (stamps[i]! - meanStamp);
    variance += (i - meanRow) ** 2;
  }
  const interval = covariance / variance;
  return { start: meanStamp - meanRow * interval, interval };
}

/** Of the interval: what stamps may stray from the straight line and still be even (jitter, rounding). */
const EVEN_WITHIN = 0.1;

/** Whether stamps lie on a line, but for jitter and rounding that are small beside its interval. */
export function isEven(stamps: Float64Array, line: StampLine): boolean {
  return largestDeviation(stamps, line) <= EVEN_WITHIN * line.interval;
}

/** The largest distance of a stamp from a line, in the stamps' unit. */
export function largestDeviation(stamps: Float64Array, line: StampLine): number {
  let largest = 0;
  for (let i = 0; i < stamps.length; i++) {
    const deviation = Math.abs(stamps[i]! - line.start - i * line.interval);
    if (deviation > largest) largest = deviation;
  }
  return largest;
}
