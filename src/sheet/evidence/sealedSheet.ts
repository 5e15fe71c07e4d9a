import { jsonText } from '../jsonText.ts';
import { escapedBetweenTags } from '../paper/escaped.ts';
import { drawPicture } from './drawPicture.ts';
import type { Evidence } from './evidence.ts';
import type { Press } from './press.ts';

/** Evidence with the digests that tie it to its sheet. */
export type SealedEvidence<E extends Evidence = Evidence> = E & {
  /** Of `jsonText(result)`. */
  readonly resultSha256: string;
  /** Of the sheet's text without the element that carries the evidence. */
  readonly pictureSha256: string;
};

/** The element that carries the evidence stands on a line of its own. */
export const evidenceOpen = '<metadata id="evidence" data-type="application/json">';
export const evidenceClose = '</metadata>\n';

/**
 * A sheet as the text of one self-contained SVG file, with all that it was drawn from inside it as data.
 *
 * @returns well-formed XML; the same evidence gives the same text.
 */
export function sealedSheet({ document, sha256 }: Press, evidence: Evidence): string {
  const picture = drawPicture(document, evidence);
  const sealed: SealedEvidence = {
    ...evidence,
    resultSha256: sha256(jsonText(evidence.result)),
    pictureSha256: sha256(picture),
  };
  const at = picture.indexOf('</desc>\n') + '</desc>\n'.length;
  return `${picture.slice(0, at)}${evidenceOpen}${escapedBetweenTags(jsonText(sealed))}${evidenceClose}${picture.slice(at)}`;
}
