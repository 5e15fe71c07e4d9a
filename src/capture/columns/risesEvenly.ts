/** Of the rise: how far a column may stray from the straight line. */
const STRAY = 0.1;

/**
 * Whether a column looks like a time: never falls, ends above its start, and runs near a straight line,
 * which no wave does that was sampled for more than a cycle.
 *
 * @param values - NaN where missing.
 */
export function risesEvenly(values: Float64Array): boolean {
  const present = values.filter((value) => !Number.isNaN(value));
  const start = present[0] ?? 0;
  const rise = (present.at(-1) ?? 0) - start;
  if (!(rise > 0)) return false;
  return present.every(
    (value, i) =>
      (i === 0 || value >= present[i - 1]!) &&
      Math.abs(value - start - (rise * i) / (present.length - 1)) <= STRAY * rise,
  );
}
