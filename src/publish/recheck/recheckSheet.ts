import type { Notice } from '../../base/notice.ts';
import type { Evidence } from '../../draw/evidence.ts';
import { type Press, type SealedEvidence, sealOf, withData, withoutData } from '../../draw/seal.ts';
import { differenceWords } from '../../words/notices/rechecked.ts';
import { type OpenedSheet, tagEnd } from '../evidence/readEvidence.ts';
import { sealedSheet } from '../evidence/sealedSheet.ts';

/**
 * Checks a sheet against itself: it is as it was written only where its evidence, drawn and sealed anew, gives the
 * whole file, sign by sign. So every figure shown equals the figure carried, and nothing stands in the file beside.
 *
 * @param program - version of this program. What another version drew can't be drawn again by this one: of such a
 * sheet the digests are checked, and that the picture is not is a difference by itself.
 * @returns what is wrong, each in a sentence; empty only where the file is the one that its evidence gives.
 * @remarks A digest keeps out accidents and careless hands. Who changes data, picture and digests together is
 * found by `recheckCapture` alone, with the capture.
 */
export function recheckSheet(press: Press, opened: OpenedSheet, program: string): readonly Notice[] {
  const { text, picture, evidence: sealed } = opened;
  const { resultSha256: _, evidenceSha256: __, pictureSha256, ...evidence } = sealed;
  const isOurs = evidence.program === program;
  const anew = isOurs ? sealedAnew(press, evidence) : null;
  if (anew?.text === text) return [];
  if (anew?.text !== undefined && anew.text === text.replaceAll('\r\n', '\n'))
    return [differenceWords({ code: 'file.lineEnds' })];
  const faults: Notice[] = [...dataFaults(sealed, opened, press)];
  if (anew === null)
    faults.push(differenceWords({ code: 'program.other', theirs: evidence.program, ours: program }));
  else if (anew.text === undefined) faults.push(anew.fault);
  else faults.push(...pictureFaults(picture, anew.text));
  if (anew !== null && faults.length === 0) faults.push(differenceWords({ code: 'file.form' }));
  if (anew === null && faults.length === 1) {
    if (sealOf(evidence, picture, press.sha256).pictureSha256 !== pictureSha256)
      faults.push(differenceWords({ code: 'picture.digest' }));
    else if (withData(picture, sealed) !== text) faults.push(differenceWords({ code: 'file.form' }));
  }
  return faults;
}

function dataFaults(
  { resultSha256, evidenceSha256, pictureSha256: _, ...evidence }: SealedEvidence,
  { picture }: OpenedSheet,
  { sha256 }: Press,
): readonly Notice[] {
  const seal = sealOf(evidence, picture, sha256);
  if (seal.resultSha256 !== resultSha256) {
    return [differenceWords({ code: 'data.result' })];
  }
  if (seal.evidenceSha256 === evidenceSha256) return [];
  return [differenceWords({ code: 'data.other' })];
}

type SealedAnew = { readonly text: string } | { readonly text: undefined; readonly fault: Notice };

function sealedAnew(press: Press, evidence: Evidence): SealedAnew {
  try {
    return { text: sealedSheet(press, evidence) };
  } catch (error) {
    // Somebody's data, with whatever was done to them: what they stumble over here is theirs.
    const why = error instanceof Error ? error.message : String(error);
    return { text: undefined, fault: differenceWords({ code: 'data.undrawable', why }) };
  }
}

function pictureFaults(picture: string, anew: string): readonly Notice[] {
  const drawn = withoutData(anew);
  if (drawn === picture) return [];
  const texts = textFaults(picture, drawn);
  if (texts.length > 0) return texts;
  return [differenceWords({ code: 'picture.other' })];
}

/** What nobody would read through. */
const mostFaults = 50;

/**
 * Texts of one picture that stand otherwise in another.
 *
 * @param picture - as found, by whomsoever; the time grows with its length alone.
 * @param drawn - as it should be.
 * @returns empty where all texts are the same, whatever else differs; the first fifty of more.
 */
function textFaults(picture: string, drawn: string): readonly Notice[] {
  const found = textsOf(picture);
  const right = textsOf(drawn);
  if (found.length !== right.length) {
    const [isFound, isRight] = [new Set(found), new Set(right)];
    const extra = found.filter((text) => !isRight.has(text)).slice(0, mostFaults);
    const missing = right.filter((text) => !isFound.has(text)).slice(0, mostFaults);
    return [...extra.map((text) => fault(text, null)), ...missing.map((text) => fault(null, text))];
  }
  const others = found.flatMap((text, i) => (text === right[i] ? [] : [i])).slice(0, mostFaults);
  return others.map((i) => fault(found[i]!, right[i]!));
}

function fault(found: string | null, right: string | null): Notice {
  return differenceWords({ code: 'picture.text', found, right });
}

/** What stands between tags after each element that shows text. */
function textsOf(svg: string): string[] {
  const texts: string[] = [];
  for (let from = svg.indexOf('<'); from >= 0; ) {
    const end = tagEnd(svg, from);
    if (end < 0) break;
    const next = svg.indexOf('<', end);
    if (isTextTag(svg, from)) texts.push(svg.slice(end, next < 0 ? svg.length : next));
    from = next;
  }
  return texts;
}

function isTextTag(svg: string, from: number): boolean {
  const name = /^<([\w:.-]{1,20})/.exec(svg.slice(from, from + 24))?.[1];
  return name === 'text' || name === 'tspan' || name === 'title' || name === 'desc';
}
