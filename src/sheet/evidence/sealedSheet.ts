import { jsonText } from '../jsonText.ts';
import { escapedBetweenTags } from '../paper/escaped.ts';
import { descriptionEnd, drawPicture } from './drawPicture.ts';
import type { Evidence } from './evidence.ts';
import type { Digest, Press } from './press.ts';

/** Evidence with the digests that tie it to its sheet. */
export type SealedEvidence = Evidence & Seal;

export interface Seal {
  /** Of `jsonText(result)`. */
  readonly resultSha256: string;
  /** Of `jsonText` of the whole evidence, without this seal. */
  readonly evidenceSha256: string;
  /** Of the sheet's text without the element that carries the evidence. */
  readonly pictureSha256: string;
}

/**
 * A sheet as the text of one self-contained SVG file, with all that it was drawn from inside it as data.
 *
 * @returns well-formed XML; the same evidence gives the same text.
 */
export function sealedSheet(press: Press, evidence: Evidence): string {
  // Drawn from what a reader will find, so that it can be drawn again from that.
  const picture = drawPicture(press, JSON.parse(jsonText(evidence)) as Evidence);
  const sealed = { ...evidence, ...sealOf(evidence, picture, press.sha256) };
  const at = picture.indexOf(descriptionEnd) + descriptionEnd.length;
  const data = escapedBetweenTags(jsonText(sealed));
  return `${picture.slice(0, at)}<metadata id="evidence">${data}</metadata>\n${picture.slice(at)}`;
}

/** The digests of evidence and its picture. */
export function sealOf(evidence: Evidence, picture: string, sha256: Digest): Seal {
  return {
    resultSha256: sha256(jsonText(evidence.result)),
    evidenceSha256: sha256(jsonText(evidence)),
    pictureSha256: sha256(picture),
  };
}
