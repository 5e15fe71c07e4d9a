import type { Digest } from './press.ts';
import type { OpenedSheet } from './readEvidence.ts';
import { sealOf } from './sealOf.ts';

/** Whether data and picture of a sheet are as they were written; `recheckSheet` says what isn't. */
export function isSealed({ evidence: sealed, picture }: OpenedSheet, sha256: Digest): boolean {
  const { resultSha256, evidenceSha256, pictureSha256, ...evidence } = sealed;
  const seal = sealOf(evidence, picture, sha256);
  return (
    seal.resultSha256 === resultSha256 &&
    seal.evidenceSha256 === evidenceSha256 &&
    seal.pictureSha256 === pictureSha256
  );
}
