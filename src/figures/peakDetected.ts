/** Pairs of neighbours that must differ for the order within them to mean something. */
const LEAST_PAIRS = 100;
/** Of them, those that stand in one and the same order. */
const ALIKE = 0.97;

/**
 * Whether a record is of a scope's peak detection: of each two neighbours the one is the highest, the other the lowest
 * of an interval, in the same order throughout, so that it alternates up and down all along.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 */
export function peakDetected(samples: Float64Array): boolean {
  // Rises and falls from an even to an odd place, and from an odd to an even one.
  const rises = [0, 0];
  const falls = [0, 0];
  for (let n = 1; n < samples.length; n++) {
    const step = samples[n]! - samples[n - 1]!;
    if (step > 0) rises[n & 1]!++;
    else if (step < 0) falls[n & 1]!++;
  }
  const within = [0, 1].map((place) => alike(rises[place]!, falls[place]!));
  // On a flank the way to the next interval may go on; on the whole it goes back.
  return (
    (within[0] === 1 && falls[1]! > rises[1]!) ||
    (within[0] === -1 && rises[1]! > falls[1]!) ||
    (within[1] === 1 && falls[0]! > rises[0]!) ||
    (within[1] === -1 && rises[0]! > falls[0]!)
  );
}

/** 1: nearly all rise, −1: nearly all fall, 0: neither. */
function alike(rises: number, falls: number): -1 | 0 | 1 {
  const moved = rises + falls;
  if (moved < LEAST_PAIRS) return 0;
  return rises >= ALIKE * moved ? 1 : falls >= ALIKE * moved ? -1 : 0;
}
