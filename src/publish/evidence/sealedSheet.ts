import { drawPicture } from '../../draw/drawPicture.ts';
import type { Evidence } from '../../draw/evidence.ts';
import { type Digest, type Press, sealOf, withData } from '../../draw/seal.ts';
import { jsonText } from '../../words/text.ts';
import type { OpenedSheet } from './readEvidence.ts';

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

/**
 * Whether a sheet's data and picture are as they were written, by its own digests, and nothing else stands in the
 * file. `recheckSheet` says what isn't, and draws anew.
 */
export function isSealed({ evidence: sealed, picture, text }: OpenedSheet, sha256: Digest): boolean {
  const { resultSha256, evidenceSha256, pictureSha256, ...evidence } = sealed;
  const seal = sealOf(evidence, picture, sha256);
  return (
    seal.resultSha256 === resultSha256 &&
    seal.evidenceSha256 === evidenceSha256 &&
    seal.pictureSha256 === pictureSha256 &&
    withData(picture, sealed) === text
  );
}
