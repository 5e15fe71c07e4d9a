/** Beyond this no probe on a bench reads: whole numbers so large are codes. */
const LARGEST_PLAUSIBLE = 2000;
const LEAST_LEVELS = 16;

/**
 * Whether a column without a unit holds a converter's bare codes: whole numbers of many levels, none
 * negative (an AC wave in volts has negative values) or too large for volts.
 */
export function isConverterCounts(samples: Float64Array): boolean {
  const levels = new Set<number>();
  let least = Number.POSITIVE_INFINITY;
  let largest = 0;
  for (const sample of samples) {
    if (Number.isNaN(sample)) continue;
    if (!Number.isInteger(sample)) return false;
    if (levels.size <= LEAST_LEVELS) levels.add(sample);
    least = Math.min(least, sample);
    largest = Math.max(largest, Math.abs(sample));
  }
  return levels.size > LEAST_LEVELS && (least >= 0 || largest > LARGEST_PLAUSIBLE);
}
