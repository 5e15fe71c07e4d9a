import { cutText } from './cutText.ts';
import type { TextWeight } from './textWeight.ts';
import { textWidth } from './textWidth.ts';

/**
 * Breaks a text into lines at its blanks (never at a no-break space); a word wider than a line is broken
 * anywhere. What does not fit the last line allowed is cut with an ellipsis.
 *
 * @param widthPx - of a line.
 * @param maxLines - 1 and up.
 */
export function wrapText(
  text: string,
  widthPx: number,
  maxLines: number,
  sizePx: number,
  weight: TextWeight = 400,
): string[] {
  const fits = (line: string): boolean => textWidth(line, sizePx, weight) <= widthPx;
  const lines: string[] = [];
  let rest = text;
  while (rest !== '') {
    if (fits(rest)) return [...lines, rest];
    if (lines.length === maxLines - 1) return [...lines, cutText(rest, widthPx, sizePx, weight)];
    const end = lineEnd(rest, fits);
    lines.push(rest.slice(0, end));
    rest = rest.slice(end).replace(/^ +/, '');
  }
  return lines;
}

/** Where the first line ends: after the last word that fits, else inside the first word. */
function lineEnd(text: string, fits: (line: string) => boolean): number {
  let end = 0;
  for (const { index } of text.matchAll(/ +|$/g)) {
    if (!fits(text.slice(0, index))) break;
    end = index;
  }
  if (end > 0) return end;
  for (const character of text) {
    if (end > 0 && !fits(text.slice(0, end + character.length))) break;
    end += character.length;
  }
  return end;
}
