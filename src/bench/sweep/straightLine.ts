/** The straight line y = intercept + slope · x that fits points of known scatter best. */
export interface StraightLine {
  readonly intercept: number;
  readonly slope: number;
  readonly interceptVariance: number;
  readonly slopeVariance: number;
  /** Of intercept and slope; negative where the points lie on the positive side of x. */
  readonly covariance: number;
  /** Σ ((y − line) / u)²; about as large as `degreesOfFreedom` where a straight line is right. */
  readonly chiSquare: number;
  /** Points less two. */
  readonly degreesOfFreedom: number;
}

/**
 * Weighted least squares for a straight line, each point weighted by 1/u².
 *
 * About the weighted mean x̄ with W = Σ 1/u²: slope = Σ w (x − x̄) y / Σ w (x − x̄)²,
 * var slope = 1 / Σ w (x − x̄)², var intercept = 1/W + x̄² · var slope, covariance = −x̄ · var slope.
 *
 * @param x - taken as exact; at least two different values.
 * @param y - as many as x.
 * @param u - standard uncertainties of y, > 0.
 * @returns variances as the u state them, not rescaled by how well the line fits.
 * @throws RangeError where no line is determined.
 */
export function straightLine(x: readonly number[], y: readonly number[], u: readonly number[]): StraightLine {
  if (x.length !== y.length || x.length !== u.length) throw new RangeError('x, y and u differ in length');
  if (!u.every((deviation) => deviation > 0)) throw new RangeError('an uncertainty must be positive');
  const weights = u.map((deviation) => 1 / deviation ** 2);
  const sum = (of: (i: number) => number): number => weights.reduce((total, w, i) => total + w * of(i), 0);
  const weight = sum(() => 1);
  const meanX = sum((i) => x[i]!) / weight;
  const meanY = sum((i) => y[i]!) / weight;
  const spread = sum((i) => (x[i]! - meanX) ** 2);
  if (!(spread > 0)) throw new RangeError('a line needs two different x');
  const slope = sum((i) => (x[i]! - meanX) * (y[i]! - meanY)) / spread;
  const intercept = meanY - slope * meanX;
  return {
    intercept,
    slope,
    interceptVariance: 1 / weight + meanX ** 2 / spread,
    slopeVariance: 1 / spread,
    covariance: -meanX / spread,
    chiSquare: sum((i) => (y[i]! - intercept - slope * x[i]!) ** 2),
    degreesOfFreedom: x.length - 2,
  };
}
