import type { Assay, Dynamics } from '../../verdict/assay.ts';
import { changeSentence } from '../answer/changeSentence.ts';
import { fileName } from '../answer/fileName.ts';
import { isInvented } from '../answer/isInvented.ts';
import { questionSentence } from '../answer/questionSentence.ts';
import { spokenLines } from '../answer/spokenLines.ts';
import { cleanTexts } from '../cleanTexts.ts';
import { drawFigureRows } from '../panels/drawFigureRows.ts';
import { drawFooter } from '../panels/drawFooter.ts';
import { drawNotes } from '../panels/drawNotes.ts';
import { drawTitle } from '../panels/drawTitle.ts';
import { sheetDoubts } from '../panels/sheetDoubts.ts';
import { subjectLine } from '../panels/subjectLine.ts';
import { openSheet } from '../paper/openSheet.ts';
import { page } from '../paper/page.ts';
import { chosenCurves } from './chosenCurves.ts';
import { curveNotes } from './curveNotes.ts';
import { drawEnvelope } from './drawEnvelope.ts';
import { drawInstant } from './drawInstant.ts';
import { periodOf } from './periodOf.ts';
import { stepFigureRows } from './stepFigureRows.ts';
import { stepSubject } from './stepSubject.ts';

/** Baseline of the headings under the header. */
const bodyY = 228;
/** Baseline of the lower panel's heading. */
const lowerY = 560;
/** The last baseline above the footer. */
const bodyBottom = 820;

/** A result whose voltage changes along its record. */
export type ChangingAssay = Assay & { readonly dynamics: Dynamics };

/**
 * Draws what changes along a record as one page: the envelope over the curves that it is held against, the instant
 * itself, and the figures.
 *
 * @param document - a browser's, or jsdom's.
 * @param assay - what is from a capture in it is cleaned and escaped here.
 * @returns a detached element, 1600 × 900, self-contained.
 */
export function drawStepSheet(document: Document, assay: ChangingAssay): SVGSVGElement {
  const { result, dynamics } = cleanTexts(assay);
  const subject = stepSubject(result, dynamics);
  const question = questionSentence(result);
  const answer = changeSentence(result);
  const { svg, panel } = openSheet(
    document,
    answer,
    `${answer} One page: the voltage of the capture ${fileName(result.file)} along its record, the instant at which it changes, and the figures of that change. SHA-256 of the capture: ${result.sha256}. A measurement, not a certificate.`,
  );
  drawTitle(panel(), { question, answer, subject: subjectLine(result), isInvented: isInvented(result) });
  const held = subject?.kind === 'step' ? dynamics.curves.filter(({ step }) => step === subject.index) : [];
  const chosen = chosenCurves(held);
  const left = { x: page.left, width: page.twoColumns };
  drawEnvelope(
    panel(),
    dynamics,
    subject,
    result.nominal?.voltageV ?? null,
    chosen.filter(({ curve }) => curve.quantity === 'RMS voltage'),
    { ...left, y: bodyY, height: lowerY - bodyY - 40 },
  );
  drawInstant(panel(), dynamics, subject, periodOf(result), {
    ...left,
    y: lowerY,
    height: bodyBottom - lowerY,
  });

  const column = { x: page.columnX(2), width: page.columnWidth };
  const margin = panel();
  let y = drawFigureRows(margin, stepFigureRows(subject, dynamics), {
    ...column,
    y: bodyY,
    height: bodyBottom - bodyY,
  });
  const from = (share: number) => ({ ...column, y, height: share * (bodyBottom - y) });
  y = drawNotes(margin, 'To say on camera', [spokenLines(result).join(' ')], from(1));
  y = drawNotes(margin, 'What to doubt', sheetDoubts(result.notices), from(0.7));
  drawNotes(margin, 'Against published curves', curveNotes(chosen), from(1));
  drawFooter(panel(), result);
  return svg;
}
