/**
 * A text of which a little is looked at here and there: a string, or one whose bytes are fetched when they are
 * asked for.
 */
export interface TextAccess {
  readonly length: number;
  /** @returns NaN behind the end. */
  charCodeAt(at: number): number;
  /** @param from - half-open with `to`, 0 ≤ from ≤ to ≤ length. */
  slice(from: number, to: number): string;
}
