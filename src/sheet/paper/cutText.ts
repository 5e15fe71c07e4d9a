import type { TextWeight } from './textWeight.ts';
import { textWidth } from './textWidth.ts';

/** A text as it is, or cut short with an ellipsis so that it fits a width in px; empty where not even that fits. */
export function cutText(text: string, widthPx: number, sizePx: number, weight: TextWeight = 400): string {
  const fits = (line: string): boolean => textWidth(line, sizePx, weight) <= widthPx;
  if (fits(text)) return text;
  const characters = [...text];
  const cutAfter = (count: number): string => `${characters.slice(0, count).join('').trimEnd()}…`;
  // By halves: a name may have thousands of characters.
  let most = 0;
  for (let beyond = characters.length; beyond - most > 1; ) {
    const middle = Math.floor((most + beyond) / 2);
    if (fits(cutAfter(middle))) most = middle;
    else beyond = middle;
  }
  return fits(cutAfter(most)) ? cutAfter(most) : '';
}
