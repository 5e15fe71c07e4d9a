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
    if (content.trim() !== '') lines.push(content);
    // Jump ahead by a stride, then to the start of the line after that place.
    from = Math.max(line.next, from + stride > line.next ? lineAt(text, from + stride).next : 0);
  }
  return lines;
}
