import type { CompareDocument } from '../../bench/compare/compareDocument.ts';
import type { OneCapture, OverlayEvidence } from './evidence.ts';
import { publishedComparison } from './published.ts';

/**
 * What the sheet of two captures over each other carries.
 *
 * @param sides - what the sheet of each would carry.
 * @param basis - what the differences' uncertainties were taken from.
 * @param program - version of the program.
 */
export function overlayEvidence(
  sides: readonly [a: OneCapture, b: OneCapture],
  result: CompareDocument,
  basis: OverlayEvidence['basis'],
  program: string,
): OverlayEvidence {
  return {
    schema: 'sineassay/sheet@1',
    program,
    picture: 'overlay',
    result: publishedComparison(result),
    basis,
    sides,
  };
}
