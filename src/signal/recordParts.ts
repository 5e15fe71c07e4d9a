/** A record below this many periods is refused. A record of N samples covers N intervals. */
export const MINIMUM_CYCLES = 1.3;

/**
 * Samples from which a record is long. Below it every sum runs over every sample; from it up fits are folded, first
 * looks see means of blocks, and statistics that a part of the record settles are taken on a part.
 */
export const LONG_RECORD = 200_000;

/**
 * Samples that a pass over a long record works at before it goes on. The work on so many stands in a function of its
 * own, small and without others around it: entered and left a thousand times, it is compiled early, once and whole,
 * where one loop over all samples would be compiled again at every turn that it takes for the first time.
 */
export const RUN_SAMPLES: number = 2 ** 11;

/** The middle of a record. */
interface MiddleRange {
  /** Samples from ≤ n < to. */
  readonly from: number;
  readonly to: number;
  /** How far its centre stands behind the record's, in samples: −½ where one is of an odd, one of an even number. */
  readonly apart: number;
}

/** @param longest - samples at most; all where the record has no more. */
export function middleRange(length: number, longest: number): MiddleRange {
  const held = Math.min(length, longest);
  const from = (length - held) >> 1;
  return { from, to: from + held, apart: from + (held - length) / 2 };
}

/**
 * The first missing sample at or behind a place.
 *
 * @param samples - shape N; NaN marks a missing sample.
 * @returns N where none is missing.
 */
export function firstMissing(samples: Float64Array, from = 0): number {
  for (let n = from; n < samples.length; n += RUN_SAMPLES) {
    const end = Math.min(samples.length, n + RUN_SAMPLES);
    const missing = missingWithin(samples, n, end);
    if (missing < end) return missing;
  }
  return samples.length;
}

function missingWithin(samples: Float64Array, from: number, to: number): number {
  let n = from;
  while (n < to && !Number.isNaN(samples[n]!)) n++;
  return n;
}

/**
 * Means of neighbouring blocks: a shorter record of the same shape, for a first look.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param blockLength - samples a block, ≥ 1; a last, shorter block is dropped.
 * @returns shape ⌊N / blockLength⌋; NaN where a block holds no sample.
 * @remarks Aliases what lies above half the new rate, damped by the block's sinc: not for figures.
 * @example blockMeans(Float64Array.of(1, 3, 5, 7, 9), 2) // 2, 6
 */
export function blockMeans(samples: Float64Array, blockLength: number): Float64Array {
  const means = new Float64Array(Math.floor(samples.length / blockLength));
  for (let block = 0; block < means.length; block++) {
    means[block] = meanOf(samples, block * blockLength, (block + 1) * blockLength);
  }
  return means;
}

/** Of the present samples from ≤ n < to. */
function meanOf(samples: Float64Array, from: number, to: number): number {
  let sum = 0;
  let count = 0;
  for (let n = from; n < to; n++) {
    const x = samples[n]!;
    if (Number.isNaN(x)) continue;
    sum += x;
    count++;
  }
  return count === 0 ? Number.NaN : sum / count;
}
