import type { Digest } from './press.ts';
import type { OpenedSheet } from './readEvidence.ts';
import { sealOf } from './sealOf.ts';
import { withData } from './withData.ts';

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
