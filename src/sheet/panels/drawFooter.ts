import type { MeasureResult } from '../../verdict/measureDocument.ts';
import { fileName } from '../answer/fileName.ts';
import { cutText } from '../paper/cutText.ts';
import { page } from '../paper/page.ts';
import { palette } from '../paper/palette.ts';
import { textWidth } from '../paper/textWidth.ts';
import { type Panel, writeText } from '../paper/writeText.ts';
import { drawCautions, footY } from './drawCautions.ts';

/** The cautions, and the capture's name and digest, by which a reader can check the sheet. */
export function drawFooter(panel: Panel, capture: Pick<MeasureResult, 'file' | 'sha256'>): void {
  const style = { sizePx: 14, ink: palette.soft } as const;
  const fileX = drawCautions(panel);
  const digest = `SHA-256 ${capture.sha256}`;
  writeText(panel, cutText(digest, 640, 14), page.right, footY, { ...style, anchor: 'end' });
  const room = page.right - fileX - Math.min(textWidth(digest, 14), 640) - 20;
  writeText(panel, cutText(`Capture: ${fileName(capture.file)}`, room, 14), fileX, footY, style);
}
