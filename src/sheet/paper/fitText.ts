import type { TextWeight } from './textWeight.ts';
import { wrapText } from './wrapText.ts';

/**
 * The largest size at which a text fits the lines allowed; at the smallest size it is cut.
 *
 * @param sizesPx - to try, largest first; at least one.
 */
export function fitText(
  text: string,
  widthPx: number,
  sizesPx: readonly [number, ...number[]],
  maxLines: number,
  weight: TextWeight = 400,
): { readonly lines: readonly string[]; readonly sizePx: number } {
  for (const sizePx of sizesPx) {
    const lines = wrapText(text, widthPx, maxLines + 1, sizePx, weight);
    if (lines.length <= maxLines) return { lines, sizePx };
  }
  const sizePx = sizesPx.at(-1) ?? sizesPx[0];
  return { lines: wrapText(text, widthPx, maxLines, sizePx, weight), sizePx };
}
