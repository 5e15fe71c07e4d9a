import { drawComparisonCard, drawUnitCard } from '../card/drawBenchCard.ts';
import { drawCard } from '../card/drawCard.ts';
import { comparisonSvg } from '../comparisonSvg.ts';
import { drawOverlaySheet } from '../overlay/drawOverlaySheet.ts';
import { svgText } from '../paper/svgText.ts';
import { sheetSvg } from '../sheetSvg.ts';
import { stepSvg } from '../stepSvg.ts';
import { sweepSvg } from '../sweepSvg.ts';
import { assayOf } from './assayOf.ts';
import type { Evidence } from './evidence.ts';
import type { Press } from './press.ts';
import { typefaceStyle } from './typeface.ts';
import { descriptionEnd } from './withData.ts';

/**
 * The picture of what a sheet carries, as the text of an SVG file with its typeface inside; the same evidence gives
 * the same text.
 *
 * @throws RangeError where a sheet of changes carries none.
 */
export function drawPicture({ document, typeface }: Press, evidence: Evidence): string {
  const svg = drawn(document, evidence);
  const at = svg.indexOf(descriptionEnd) + descriptionEnd.length;
  return svg.slice(0, at) + typefaceStyle(svg, typeface) + svg.slice(at);
}

function drawn(document: Document, evidence: Evidence): string {
  switch (evidence.picture) {
    case 'wave':
      return sheetSvg(document, assayOf(evidence));
    case 'changes': {
      const { dynamics, ...assay } = assayOf(evidence);
      if (dynamics === null) throw new RangeError('A sheet of changes needs changes');
      return stepSvg(document, { ...assay, dynamics });
    }
    case 'card':
      return svgText(drawCard(document, assayOf(evidence), evidence.theme));
    case 'overlay': {
      const [a, b] = evidence.sides;
      return svgText(drawOverlaySheet(document, [assayOf(a), assayOf(b)], evidence.result));
    }
    case 'sweep':
      return evidence.card === undefined
        ? sweepSvg(document, evidence.result)
        : svgText(drawUnitCard(document, evidence.result, evidence.card));
    case 'comparison':
      return evidence.card === undefined
        ? comparisonSvg(document, evidence.result)
        : svgText(drawComparisonCard(document, evidence.result, evidence.card));
  }
}
