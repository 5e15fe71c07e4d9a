import { drawComparisonCard, drawUnitCard } from './card/drawBenchCard.ts';
import { drawCard } from './card/drawCard.ts';
import { comparisonSvg } from './comparison/drawComparisonSheet.ts';
import { sheetSvg } from './drawSheet.ts';
import { assayOf, type Evidence } from './evidence.ts';
import { drawOverlaySheet } from './overlay/drawOverlaySheet.ts';
import { svgText } from './paper/writeText.ts';
import { descriptionEnd, type Press, typefaceStyle } from './seal.ts';
import { stepSvg } from './step/drawStepSheet.ts';
import { sweepSvg } from './sweep/drawSweepSheet.ts';

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
