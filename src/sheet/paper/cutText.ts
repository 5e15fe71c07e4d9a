import type { TextWeight } from './textWeight.ts';
import { textWidth } from './textWidth.ts';

/** A text as it is, or cut short with an ellipsis so that it fits a width in px. */
export function cutText(text: string, widthPx: number, sizePx: number, weight: TextWeight = 400): string {
  if (textWidth(text, sizePx, weight) <= widthPx) return text;
  const characters = [...text];
  while (characters.length > 0) {
    characters.pop();
    const short = `${characters.join('').trimEnd()}…`;
    if (textWidth(short, sizePx, weight) <= widthPx) return short;
  }
  return '';
}
