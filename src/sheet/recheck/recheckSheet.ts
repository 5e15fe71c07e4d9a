import type { Notice } from '../../base/notice.ts';
import { drawPicture } from '../evidence/drawPicture.ts';
import type { Evidence } from '../evidence/evidence.ts';
import type { Press } from '../evidence/press.ts';
import type { OpenedSheet } from '../evidence/readEvidence.ts';
import { sealOf } from '../evidence/sealOf.ts';
import { textFaults } from './textFaults.ts';

/**
 * Checks a sheet against itself: that its data are as they were written, and that its picture is the one that
 * they draw, so that every figure shown equals the figure carried.
 *
 * @param program - version of this program. A sheet of another version may be drawn otherwise: of its picture
 * the digest alone is checked.
 * @returns what is wrong, each in a sentence; empty where nothing is.
 * @remarks A digest keeps out accidents and careless hands. Who changes data, picture and digests together is
 * found by `recheckCapture` alone, with the capture.
 */
export function recheckSheet(
  press: Press,
  { evidence: sealed, picture }: OpenedSheet,
  program: string,
): readonly Notice[] {
  const { resultSha256, evidenceSha256, pictureSha256, ...evidence } = sealed;
  const faults: Notice[] = [];
  const seal = sealOf(evidence, picture, press.sha256);
  if (seal.resultSha256 !== resultSha256) {
    faults.push({ code: 'data.result', message: 'The result inside it was changed after it was written.' });
  } else if (seal.evidenceSha256 !== evidenceSha256) {
    faults.push({
      code: 'data.other',
      message: 'What it carries beside the result was changed after it was written.',
    });
  }
  if (evidence.program === program) faults.push(...pictureFaults(press, evidence, picture));
  if (faults.length === 0 && seal.pictureSha256 !== pictureSha256) {
    faults.push({ code: 'picture.digest', message: 'The picture was changed after it was drawn.' });
  }
  return faults;
}

function pictureFaults(press: Press, evidence: Evidence, picture: string): readonly Notice[] {
  let drawn: string;
  try {
    drawn = drawPicture(press, evidence);
  } catch (error) {
    // Somebody's data, with whatever was done to them: what they stumble over here is theirs.
    const reason = error instanceof Error ? error.message : String(error);
    return [
      { code: 'data.undrawable', message: `No picture can be drawn from the data inside it (${reason}).` },
    ];
  }
  if (drawn === picture) return [];
  const texts = textFaults(picture, drawn);
  if (texts.length > 0) return texts;
  return [
    {
      code: 'picture.other',
      message: 'The picture is not the one that its data draw: it was changed or swapped.',
    },
  ];
}
