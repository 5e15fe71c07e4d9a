import { lineAt } from './lineAt.ts';
import type { TextAccess } from './textAccess.ts';

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
