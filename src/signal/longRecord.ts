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
