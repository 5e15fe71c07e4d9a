import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { fileName } from '../answer/fileName.ts';
import { cutText } from '../paper/cutText.ts';
import { page } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { type Panel, writeText } from '../paper/writeText.ts';

const caution =
  'Mains voltage can kill. Use an isolated or differential probe rated for the voltage and category; a scope’s ground clip is earth. Never connect an inverter’s output to building wiring. Local codes and licensed practice come first.';

/** The caution, what the sheet is not, and the capture's name and digest, by which a reader can check it. */
export function drawFooter(panel: Panel, result: MeasureResult): void {
  const style = { sizePx: 14, ink: palette.soft } as const;
  panel.append('path').attr('d', `M${page.left} 837H${page.right}`).attr('stroke', palette.line);
  writeText(panel, cutText(caution, page.contentWidth, 14), page.left, 857, style);
  const digest = `SHA-256 ${result.sha256}`;
  const certificate = 'A measurement, not a certificate.';
  writeText(panel, certificate, page.left, 877, { sizePx: 14, weight: 600 });
  const fileX = page.left + textWidth(certificate, 14, 600) + 14;
  writeText(panel, cutText(digest, 640, 14), page.right, 877, { ...style, anchor: 'end' });
  const room = page.right - fileX - Math.min(textWidth(digest, 14), 640) - 20;
  writeText(panel, cutText(`Capture: ${fileName(result.file)}`, room, 14), fileX, 877, style);
}
