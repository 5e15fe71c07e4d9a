import type { Assay } from '../../verdict/assay.ts';
import { captureLines } from '../answer/captureLines.ts';
import { mainFigures } from '../answer/mainFigures.ts';
import { storyWords } from '../answer/storyWords.ts';
import type { Box } from '../paper/page.ts';
import type { Panel } from '../paper/writeText.ts';
import { drawClaims } from './drawClaims.ts';
import { drawFigures } from './drawFigures.ts';
import { drawNotes } from './drawNotes.ts';
import { drawParagraph } from './drawParagraph.ts';
import { sheetDoubts } from './sheetDoubts.ts';

/** Doubts may take this share of what the figures and claims leave; how it was measured takes the rest. */
const doubtShare = 0.75;

/** The right-hand column, block under block: figures, claims, what to doubt, how it was measured. */
export function drawMargin(panel: Panel, { result, method }: Assay, box: Box): void {
  const bottom = box.y + box.height;
  const from = (y: number, share = 1): Box => ({ ...box, y, height: share * (bottom - y) });
  const figures = mainFigures(result);
  let y = box.y;
  if (figures !== null) y = drawFigures(panel, figures, storyWords(result)?.stretch ?? '', from(y));
  y = drawClaims(panel, result.claims, from(y));
  const { meter, notices } = result;
  const isCalibrated = meter?.answer === 'calibrated';
  const doubts = [...(meter === undefined || isCalibrated ? [] : [meter.message]), ...sheetDoubts(notices)];
  const how = [...captureLines(result), ...(isCalibrated ? [meter.message] : []), ...method];
  y = drawNotes(panel, 'What to doubt', doubts, from(y, doubtShare));
  drawParagraph(panel, 'How it was measured', how, from(y));
}
