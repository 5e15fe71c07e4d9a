import type { TextAccess } from './textAccess.ts';

/** A line of a text without its line end, and where the next one starts. */
export interface LineAt {
  /** Half-open: the line is text.slice(from, to). */
  readonly to: number;
  /** Offset of the next line; text.length or more after the last. */
  readonly next: number;
}

/**
 * The end of the line that starts at an offset. Line feed, carriage return and the pair each end a line.
 *
 * @param from - offset of the line's first character, 0 ≤ from ≤ text.length.
 */
export function lineAt(text: TextAccess, from: number): LineAt {
  let to = from;
  for (; to < text.length; to++) {
    const code = text.charCodeAt(to);
    if (code === 10) return { to, next: to + 1 };
    if (code === 13) return { to, next: text.charCodeAt(to + 1) === 10 ? to + 2 : to + 1 };
  }
  return { to, next: to };
}
