import { type Panel, type TextStyle, writeText } from './writeText.ts';

/**
 * Writes lines one under the other.
 *
 * @param y - baseline of the first line.
 * @returns the baseline that the next line would have.
 */
export function writeLines(
  panel: Panel,
  lines: readonly string[],
  x: number,
  y: number,
  leading: number,
  style: TextStyle,
): number {
  lines.forEach((line, i) => {
    writeText(panel, line, x, y + i * leading, style);
  });
  return y + lines.length * leading;
}
