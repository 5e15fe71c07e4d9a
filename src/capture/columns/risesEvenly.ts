/** Of the rise: how far a column may stray from the straight line. */
const STRAY = 0.1;

/**
 * Whether a column looks like a time: never falls unless to start anew, ends above its start, and runs near a
 * straight line, which no wave does that was sampled for more than a cycle.
 *
 * @param values - NaN where missing.
 */
export function risesEvenly(values: Float64Array): boolean {
  const present = values.filter((value) => Number.isFinite(value));
  const runs = runsBetweenFalls(present);
  // Records pasted one under the other: each starts its time anew.
  return runs.length === 1 || runs.every((run) => run.length >= LEAST_RUN) ? runs.every(isEvenRise) : false;
}

/** Rows of a record, at least, whose time starts anew behind it. */
const LEAST_RUN = 16;

function runsBetweenFalls(values: Float64Array): Float64Array[] {
  const runs: Float64Array[] = [];
  let from = 0;
  for (let i = 1; i <= values.length; i++) {
    if (i < values.length && values[i]! >= values[i - 1]!) continue;
    runs.push(values.subarray(from, i));
    from = i;
  }
  return runs;
}

function isEvenRise(present: Float64Array): boolean {
  const start = present[0] ?? 0;
  const rise = (present.at(-1) ?? 0) - start;
  if (!(rise > 0)) return false;
  return present.every(
    (value, i) => Math.abs(value - start - (rise * i) / (present.length - 1)) <= STRAY * rise,
  );
}
