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
