import { svgText } from './paper/svgText.ts';
import { type ChangingAssay, drawStepSheet } from './step/drawStepSheet.ts';

/** What changes along a record as the text of one self-contained SVG file (see `drawStepSheet`). */
export function stepSvg(document: Document, assay: ChangingAssay): string {
  return svgText(drawStepSheet(document, assay));
}
