import type { Assay } from '../verdict/assay.ts';
import { drawSheet } from './drawSheet.ts';
import { svgText } from './paper/svgText.ts';

/** A result as the text of one self-contained SVG file (see `drawSheet`); the same assay gives the same text. */
export function sheetSvg(document: Document, assay: Assay): string {
  return svgText(drawSheet(document, assay));
}
