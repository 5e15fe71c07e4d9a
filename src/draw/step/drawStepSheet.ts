import type { Dynamics, WordedAssay } from '../../assay/assay.ts';
import { isInvented, questionSentence, spokenLines } from '../../words/answerSentence.ts';
import { changeSentence } from '../../words/courseWords.ts';
import { significantText, withUnit } from '../../words/numbers.ts';
import { secondsText } from '../../words/quantities.ts';
import { cleanTexts, fileName } from '../../words/text.ts';
import { drawNotes } from '../panels/drawNotes.ts';
import { drawFigureRows } from '../panels/drawRows.ts';
import { drawFooter, drawTitle, sheetDoubts, subjectLine } from '../panels/drawTitle.ts';
import { openSheet, page } from '../paper/page.ts';
import { svgText } from '../paper/writeText.ts';
import { curveName, drawEnvelope } from './drawEnvelope.ts';
import { drawInstant } from './drawInstant.ts';
import { stepFigureRows } from './stepFigureRows.ts';
import { periodOf, type StepCurve, stepSubject } from './stepPicture.ts';

/** What changes along a record as the text of one self-contained SVG file (see `drawStepSheet`). */
export function stepSvg(document: Document, assay: ChangingAssay): string {
  return svgText(drawStepSheet(document, assay));
}

/** Baseline of the headings under the header. */
const bodyY = 228;
/** Baseline of the lower panel's heading. */
const lowerY = 560;
/** The last baseline above the footer. */
const bodyBottom = 820;

/** A result whose voltage changes along its record. */
export type ChangingAssay = WordedAssay & { readonly dynamics: Dynamics };

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

/**
 * One curve for each standard and quantity: the strictest that the step stays inside, else the nearest.
 *
 * @param curves - of one step.
 * @returns those from public pages first, else in the order given.
 */
function chosenCurves(curves: readonly StepCurve[]): StepCurve[] {
  const chosen = new Map<string, StepCurve>();
  for (const candidate of curves) {
    const key = `${candidate.curve.standard} ${candidate.curve.quantity}`;
    const held = chosen.get(key);
    if (held === undefined || tells(candidate) > tells(held)) chosen.set(key, candidate);
  }
  return [...chosen.values()].sort(
    (a, b) => Number(a.curve.provenance === 'memory') - Number(b.curve.provenance === 'memory'),
  );
}

/** Larger for a curve that says more: inside with little to spare, then outside by little. */
function tells({ side, worst }: StepCurve): number {
  return side === 'inside' ? 1 / (1 + worst.marginPercent) : worst.marginPercent;
}

/** How a step stands against each curve, a sentence each; from memory is said, and that a record ended early. */
function curveNotes(curves: readonly StepCurve[]): readonly string[] {
  return curves.map(({ curve, side, worst, reachesEnd }) => {
    const percent = (value: number): string => withUnit(significantText(value, 3), '%');
    const memory = curve.provenance === 'memory' ? ', limits from memory' : '';
    const early = reachesEnd ? '' : ', as far as the record goes';
    const what = curve.quantity === 'frequency' ? 'frequency' : 'voltage';
    return `${curveName(curve)}, ${what}: ${side}${early}; nearest at ${percent(worst.percent)} of a limit of ${percent(worst.limitPercent)} after ${secondsText(worst.afterS)}${memory}. For information.`;
  });
}
