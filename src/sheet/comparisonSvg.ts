import type { BenchDocument } from '../bench/benchDocument.ts';
import { drawComparisonSheet } from './comparison/drawComparisonSheet.ts';
import { svgText } from './paper/svgText.ts';

/** Units side by side as the text of one self-contained SVG file (see `drawComparisonSheet`). */
export function comparisonSvg(document: Document, bench: BenchDocument): string {
  return svgText(drawComparisonSheet(document, bench));
}
