import { jsonText } from '../jsonText.ts';
import type { Evidence } from './evidence.ts';
import type { Digest } from './press.ts';

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

/** The digests of evidence and its picture. */
export function sealOf(evidence: Evidence, picture: string, sha256: Digest): Seal {
  return {
    resultSha256: sha256(jsonText(evidence.result)),
    evidenceSha256: sha256(jsonText(evidence)),
    pictureSha256: sha256(picture),
  };
}
