import { caution, noCertificate } from '../cautions.ts';
import { cutText } from '../paper/cutText.ts';
import { page } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { type Panel, writeText } from '../paper/writeText.ts';

/** Baseline of the foot's last line. */
export const footY = 877;

/**
 * The foot of every sheet: a rule, the caution, and what the sheet is not.
 *
 * @returns the x from which the last line is free.
 */
export function drawCautions(panel: Panel): number {
  panel.append('path').attr('d', `M${page.left} 837H${page.right}`).attr('stroke', palette.line);
  const text = cutText(caution, page.contentWidth, 14);
  writeText(panel, text, page.left, 857, { sizePx: 14, ink: palette.soft });
  writeText(panel, noCertificate, page.left, footY, { sizePx: 14, weight: 600 });
  return page.left + textWidth(noCertificate, 14, 600) + 14;
}
