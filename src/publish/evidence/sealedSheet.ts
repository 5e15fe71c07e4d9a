import { drawPicture } from '../../draw/drawPicture.ts';
import type { Evidence } from '../../draw/evidence.ts';
import { type Press, sealOf, withData } from '../../draw/seal.ts';
import { jsonText } from '../../words/text.ts';

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
