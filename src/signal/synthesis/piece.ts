/** A stretch of a cycle, in cycles, on which a wave is smooth. */
export type Piece = readonly [from: number, to: number];

/**
 * How many points a piece is scanned at, so that no lobe of the fastest part falls between two.
 *
 * @param fastestOrder - highest order that the wave contains on the piece.
 */
export function scanCount([from, to]: Piece, fastestOrder: number): number {
  return 64 + Math.ceil(32 * fastestOrder * (to - from));
}
