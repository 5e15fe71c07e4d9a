import { comparisonSvg } from '../comparisonSvg.ts';
import { sheetSvg } from '../sheetSvg.ts';
import { stepSvg } from '../stepSvg.ts';
import { sweepSvg } from '../sweepSvg.ts';
import { assayOf } from './assayOf.ts';
import type { Evidence } from './evidence.ts';

/**
 * The picture of what a sheet carries, as the text of an SVG file; the same evidence gives the same text.
 *
 * @param document - a browser's, or jsdom's.
 * @throws RangeError where a sheet of changes carries none.
 */
export function drawPicture(document: Document, evidence: Evidence): string {
  switch (evidence.picture) {
    case 'wave':
      return sheetSvg(document, assayOf(evidence));
    case 'changes': {
      const { dynamics, ...assay } = assayOf(evidence);
      if (dynamics === null) throw new RangeError('A sheet of changes needs changes');
      return stepSvg(document, { ...assay, dynamics });
    }
    case 'sweep':
      return sweepSvg(document, evidence.result);
    case 'comparison':
      return comparisonSvg(document, evidence.result);
  }
}
