import type { BenchUnit } from '../bench/benchDocument.ts';
import { svgText } from './paper/svgText.ts';
import { drawSweepSheet } from './sweep/drawSweepSheet.ts';

/** A unit's sweep as the text of one self-contained SVG file (see `drawSweepSheet`). */
export function sweepSvg(document: Document, unit: BenchUnit): string {
  return svgText(drawSweepSheet(document, unit));
}
