import { lineAt } from './lineAt.ts';

/**
 * Lines spread evenly over a text, in order: all of a short text, at most about `most` of a long one.
 * Empty lines are left out.
 */
export function sampleLines(text: string, most: number): string[] {
  const stride = Math.floor(text.length / most);
  const lines: string[] = [];
  let from = 0;
  while (from < text.length) {
    const line = lineAt(text, from);
    const content = text.slice(from, line.to);
    const isEmpty = content.trim() === '';
    if (!isEmpty) lines.push(content);
    const jump = from + stride;
    // Jump ahead by a stride, then to the start of the line after that place.
    from = isEmpty || jump <= line.next ? line.next : lineAt(text, jump).next;
  }
  return lines;
}
