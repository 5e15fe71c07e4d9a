/** Beyond this no probe on a bench reads: whole numbers so large are codes. */
const LARGEST_PLAUSIBLE = 2000;
const LEAST_LEVELS = 16;

/** What whole numbers say about being codes of a converter. */
export interface WholeNumbers {
  /** Whole numbers of many levels that are not multiples of a common step, as rounded volts would be. */
  readonly mayBeCounts: boolean;
  /** Besides, none is negative (an AC wave in volts has negative values), or some are too large for volts. */
  readonly areLikelyCounts: boolean;
}

/** @param samples - NaN where missing. */
export function wholeNumbers(samples: Float64Array): WholeNumbers {
  const levels = new Set<number>();
  let least = Number.POSITIVE_INFINITY;
  let largest = 0;
  let step = 0;
  for (const sample of samples) {
    if (Number.isNaN(sample)) continue;
    if (!Number.isInteger(sample)) return { mayBeCounts: false, areLikelyCounts: false };
    if (levels.size <= LEAST_LEVELS) levels.add(sample);
    least = Math.min(least, sample);
    largest = Math.max(largest, Math.abs(sample));
    step = commonDivisor(step, Math.abs(sample));
  }
  const mayBeCounts = levels.size > LEAST_LEVELS && step === 1;
  return { mayBeCounts, areLikelyCounts: mayBeCounts && (least >= 0 || largest > LARGEST_PLAUSIBLE) };
}

function commonDivisor(a: number, b: number): number {
  let [larger, smaller] = [a, b];
  while (smaller > 0) [larger, smaller] = [smaller, larger % smaller];
  return larger;
}
