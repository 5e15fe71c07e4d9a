/**
 * Samples from which a record is long. Below it every sum runs over every sample; from it up fits are folded, first
 * looks see means of blocks, and statistics that a part of the record settles are taken on a part.
 */
export const LONG_RECORD = 200_000;
