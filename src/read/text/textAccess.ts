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

/** The bytes of a file that need not be in memory. */
export interface ByteSource {
  readonly byteLength: number;
  /**
   * Fills an array with the file's bytes.
   *
   * @param from - offset in the file.
   * @returns how many there were: fewer than the array holds only at the file's end.
   */
  readonly read: (from: number, into: Uint8Array) => number;
}

/** A line of a text without its line end, and where the next one starts. */
interface LineAt {
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

/**
 * Lines spread evenly over a text, in order: all of a short text, at most about `most` of a long one.
 * Empty lines are left out.
 *
 * @param start - offset of the first line.
 */
export function sampleLines(text: TextAccess, most: number, start = 0): string[] {
  let stride = Math.floor((text.length - start) / most);
  const lines: string[] = [];
  let from = start;
  while (from < text.length) {
    const line = lineAt(text, from);
    const content = text.slice(from, line.to);
    const isEmpty = content.trim() === '';
    if (!isEmpty) lines.push(content);
    // A line that is longer than many others takes no share of theirs.
    if (line.to - from > stride) stride = Math.floor((text.length - line.next) / most);
    const jump = from + stride;
    // Jump ahead by a stride, then to the start of the line after that place.
    from = isEmpty || jump <= line.next ? line.next : lineAt(text, jump).next;
  }
  return lines;
}

/**
 * How many numbers are at most a limit.
 *
 * @param ascending - sorted, equal ones allowed.
 */
export function countUpTo(ascending: readonly number[], limit: number): number {
  let [from, to] = [0, ascending.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (ascending[middle]! <= limit) from = middle + 1;
    else to = middle;
  }
  return from;
}

/**
 * A text cell made fit to show: control characters become the replacement mark, runs of blanks one blank.
 *
 * @param most - longest length returned, in characters; a longer text ends in an ellipsis.
 */
export function cleanText(text: string, most = 80): string {
  const shown = text
    .replace(/\s+/g, ' ')
    .trim()
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones to take out
    .replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]/g, '\ufffd');
  return shown.length > most ? `${shown.slice(0, most - 1)}…` : shown;
}
