import { jsonText } from '../jsonText.ts';
import { drawPicture } from './drawPicture.ts';
import type { Evidence } from './evidence.ts';
import type { Press } from './press.ts';
import { sealOf } from './sealOf.ts';
import { withData } from './withData.ts';

/**
 * A sheet as the text of one self-contained SVG file, with all that it was drawn from inside it as data.
 *
 * @returns well-formed XML; the same evidence gives the same text.
 */
export function sealedSheet(press: Press, evidence: Evidence): string {
  // Drawn from what a reader will find, so that it can be drawn again from that.
  const picture = drawPicture(press, JSON.parse(jsonText(evidence)) as Evidence);
  return withData(picture, { ...evidence, ...sealOf(evidence, picture, press.sha256) });
}
