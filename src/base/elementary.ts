/**
 * The sine of an angle in radians, to about the last place of a double; the same on every engine, where `Math.sin`
 * may differ in that place.
 *
 * @returns NaN for what is not finite.
 */
export function sin(radians: number): number {
  if (Math.abs(radians) <= Math.PI / 4) return sineSeries(radians);
  if (!Number.isFinite(radians)) return Number.NaN;
  const { quarter, rest } = quarterTurns(radians);
  const size = quarter % 2 === 0 ? sineSeries(rest) : cosineSeries(rest);
  return quarter < 2 ? size : -size;
}

/** The cosine of an angle in radians, as `sin` has it. */
export function cos(radians: number): number {
  if (Math.abs(radians) <= Math.PI / 4) return cosineSeries(radians);
  if (!Number.isFinite(radians)) return Number.NaN;
  const { quarter, rest } = quarterTurns(radians);
  const size = quarter % 2 === 0 ? cosineSeries(rest) : sineSeries(rest);
  return quarter === 0 || quarter === 3 ? size : -size;
}

/**
 * The angle in radians, −π/2 to π/2, whose sine is given; the same on every engine.
 *
 * @returns NaN outside −1 to 1.
 */
export function asin(x: number): number {
  return atan2(x, Math.sqrt((1 - x) * (1 + x)));
}

/** tan(π/16): below it the series is short. */
const SHORT = 0.198912367379658;
const HALF_PI_LOW = 6.123233995736766e-17;

/**
 * The angle of the point (x, y) in radians, −π to π; the same on every engine.
 *
 * @returns for zeros of either sign and infinities what `Math.atan2` returns.
 */
export function atan2(y: number, x: number): number {
  // Multiples of π/4 are exact on any engine.
  if (x === 0 || y === 0 || !Number.isFinite(x) || !Number.isFinite(y)) return Math.atan2(y, x);
  const [a, b] = [Math.abs(x), Math.abs(y)];
  const acute = b <= a ? atan(b / a) : Math.PI / 2 - (atan(a / b) - HALF_PI_LOW);
  const upper = x > 0 ? acute : Math.PI - (acute - 2 * HALF_PI_LOW);
  return y < 0 ? -upper : upper;
}

/** 0 ≤ t ≤ 1, halved until it is short: atan t = 2·atan(t / (1 + √(1 + t²))). */
function atan(t: number): number {
  if (t > SHORT) return 2 * atan(t / (1 + Math.sqrt(1 + t * t)));
  const z = t * t;
  let sum = 0;
  // t²⁵/25 is below 10⁻¹⁸ of t.
  for (let k = 25; k >= 3; k -= 2) sum = (k % 4 === 1 ? 1 : -1) / k + z * sum;
  return t + t * z * sum;
}

/**
 * The exponent e of a number as 2^e ≤ |x| < 2^(e + 1), exactly.
 *
 * @param x - finite, not 0.
 */
export function binaryExponent(x: number): number {
  const size = Math.abs(x);
  // The engine's logarithm may be a little off; powers of two are not.
  const near = Math.floor(Math.log2(size));
  if (size < 2 ** near) return near - 1;
  return size >= 2 ** (near + 1) ? near + 1 : near;
}

/**
 * The exponent e of a number as 10^e ≤ |x| < 10^(e + 1), of the number as it prints: 3 for 1000, −1 for 0.1.
 *
 * @param x - finite, not 0.
 */
export function decimalExponent(x: number): number {
  return Number(x.toExponential().split('e')[1]);
}

/** Where the exponential of a double overflows, and where it is nothing. */
const LARGEST = 709.782712893384;
const SMALLEST = -745.2;

/** e to the power x, to about the last place of a double; the same on every engine. */
export function exp(x: number): number {
  if (Number.isNaN(x)) return x;
  if (x > LARGEST) return Number.POSITIVE_INFINITY;
  if (x < SMALLEST) return 0;
  const doublings = Math.round(x / Math.LN2);
  const high = x - doublings * LN2_HIGH;
  const low = doublings * LN2_LOW;
  const rest = high - low;
  // |rest| ≤ ln 2 / 2: what follows rest¹⁴/14! is below 10⁻¹⁸.
  let sum = 1 / 87178291200;
  for (const factor of factors) sum = factor + rest * sum;
  const power = 1 + (rest + (high - rest - low) + rest * rest * sum);
  // In two steps, for 2^1024 and 2^−1075 are no doubles.
  const half = Math.trunc(doublings / 2);
  return power * 2 ** half * 2 ** (doublings - half);
}

/** 1/13! to 1/2!. */
const factors = [
  1 / 6227020800,
  1 / 479001600,
  1 / 39916800,
  1 / 3628800,
  1 / 362880,
  1 / 40320,
  1 / 5040,
  1 / 720,
  1 / 120,
  1 / 24,
  1 / 6,
  1 / 2,
];

/**
 * The root of the sum of squares, added in the order given; the same on every engine.
 *
 * @param values - of a size whose squares are doubles: 10⁻¹⁵⁰ to 10¹⁵⁰.
 */
export function hypot(...values: readonly number[]): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return Math.sqrt(sum);
}

/** ln 2 in two parts: the first short enough that a count of up to 2²⁰ times it is exact. */
const LN2_HIGH = 0.6931471804855391;
const LN2_LOW = 7.440617110012397e-11;

/**
 * The natural logarithm, to about the last place of a double; the same on every engine.
 *
 * @returns −∞ for 0, NaN below.
 */
export function log(x: number): number {
  if (!(x > 0)) return x === 0 ? Number.NEGATIVE_INFINITY : Number.NaN;
  if (x === Number.POSITIVE_INFINITY) return x;
  let doublings = binaryExponent(x);
  const half = Math.trunc(doublings / 2);
  let mantissa = x / 2 ** half / 2 ** (doublings - half);
  if (mantissa > Math.SQRT2) {
    mantissa /= 2;
    doublings++;
  }
  // ln m = 2·artanh s, s = (m − 1)/(m + 1), |s| < 0.172: what follows s²³/23 is below 10⁻¹⁸ of s.
  const above = mantissa - 1;
  const s = above / (2 + above);
  const z = s * s;
  let sum = 0;
  for (let k = 23; k >= 3; k -= 2) sum = 2 / k + z * sum;
  // 2s = f − s·f with f = m − 1, which is exact.
  const rest = above - s * (above - z * sum);
  return doublings * LN2_HIGH + (doublings * LN2_LOW + rest);
}

/** The decimal logarithm; of a power of ten not exact: its exponent is `decimalExponent`. */
export function log10(x: number): number {
  return log(x) * Math.LOG10E;
}

/**
 * The binary logarithm, exact for powers of two; the same on every engine.
 *
 * @param x - up to 10³⁰⁰, and no less than 10⁻³⁰⁰ where it is above 0.
 */
export function log2(x: number): number {
  if (!(x > 0) || x === Number.POSITIVE_INFINITY) return log(x);
  // The whole part nearest to it, so that near 1 nothing is taken away again.
  const exponent = binaryExponent(x * Math.SQRT1_2) + 1;
  return exponent + log(x / 2 ** exponent) * Math.LOG2E;
}

/** 10 to the power of a whole number, as the double nearest to it. */
export function powerOfTen(exponent: number): number {
  return Number(`1e${exponent}`);
}

/** π/2 in three parts: the first two short enough that a count of up to 2²⁶ times them is exact. */
const HALF_PI_HIGH = 1.570796325802803;
const HALF_PI_MIDDLE = 9.920935739593517e-10;
const QUARTER_TURN_LOW = 5.721188726109832e-18;
const MOST = 2 ** 26;

/**
 * An angle as quarter turns and the rest.
 *
 * @param radians - finite.
 * @returns rest within ±π/4 of the quarter turns 0 to 3, each full turn left out.
 * @remarks Reduction by parts of π/2, after W. J. Cody and W. Waite, Software Manual for the Elementary Functions
 * (1980). Angles beyond 10⁸ are first brought down by the remainder of 2π as a double, which is off by less than the
 * spacing of doubles there.
 */
function quarterTurns(radians: number): { readonly quarter: number; readonly rest: number } {
  const turns = Math.round(radians / (Math.PI / 2));
  if (Math.abs(turns) > MOST) return quarterTurns(radians % (2 * Math.PI));
  const rest = radians - turns * HALF_PI_HIGH - turns * HALF_PI_MIDDLE - turns * QUARTER_TURN_LOW;
  return { quarter: turns & 3, rest };
}

/** sin x = x − x³/3! + x⁵/5! … for |x| ≤ π/4: what follows x¹⁷ is below 10⁻¹⁹. */
function sineSeries(x: number): number {
  const z = x * x;
  const sum =
    -1 / 6 +
    z *
      (1 / 120 +
        z *
          (-1 / 5040 +
            z *
              (1 / 362880 +
                z *
                  (-1 / 39916800 + z * (1 / 6227020800 + z * (-1 / 1307674368000 + z / 355687428096000))))));
  return x + x * z * sum;
}

/** cos x = 1 − x²/2! + x⁴/4! … for |x| ≤ π/4: what follows x¹⁶ is below 10⁻¹⁷. */
function cosineSeries(x: number): number {
  const z = x * x;
  const sum =
    1 / 24 +
    z *
      (-1 / 720 +
        z *
          (1 / 40320 +
            z * (-1 / 3628800 + z * (1 / 479001600 + z * (-1 / 87178291200 + z / 20922789888000)))));
  // 1 − z/2 rounds; what it loses is put back.
  const half = z / 2;
  const near = 1 - half;
  return near + (1 - near - half + z * z * sum);
}

/** x to the power of a whole number ≥ 0, by multiplying; the same on every engine. */
export function wholePower(x: number, exponent: number): number {
  let power = 1;
  for (let i = 0; i < exponent; i++) power *= x;
  return power;
}
