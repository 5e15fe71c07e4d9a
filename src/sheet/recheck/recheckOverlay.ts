import type { Notice } from '../../base/notice.ts';
import type { Comparand } from '../../bench/compare/comparand.ts';
import { compareCaptures } from '../../bench/compare/compareCaptures.ts';
import type { Assay } from '../../verdict/assay.ts';
import type { OneCapture, OverlayEvidence } from '../evidence/evidence.ts';
import { jsonText } from '../jsonText.ts';
import { recheckCapture } from './recheckCapture.ts';
import { shown } from './shown.ts';
import { valueDifferences } from './valueDifferences.ts';

/** Where a capture lies is no part of the result. */
const ignored = ['a.file', 'b.file'];

/** Both sides of an overlay against their captures, and the differences between the two measured again. */
export function recheckOverlay(
  { sides, result, basis }: OverlayEvidence,
  again: readonly (readonly Assay[])[],
): readonly Notice[] {
  const found = sides.map((side) => again.find(([first]) => first?.result.sha256 === side.result.sha256));
  const faults = sides.flatMap((side, i) => {
    const assays = found[i];
    return assays === undefined ? [] : recheckCapture(side, assays);
  });
  const [a, b] = sides.map((side, i) => comparandOf(side, found[i], basis));
  if (a === undefined || b === undefined) return faults;
  const compared = JSON.parse(jsonText(compareCaptures(a, b, { sameInstrument: result.sameInstrument })));
  const differences = valueDifferences(result, compared, ignored);
  return [
    ...faults,
    ...differences.map(({ path, before, after }) => ({
      code: 'figure.derived',
      message: `${path}: the sheet carries ${shown(before)}, its two captures give ${shown(after)}.`,
    })),
  ];
}

/** Undefined where the comparison took more than the sheet carries and the capture is not there. */
function comparandOf(
  { result }: OneCapture,
  assays: readonly Assay[] | undefined,
  basis: OverlayEvidence['basis'],
): Comparand | undefined {
  if (basis === 'results') return { result, budgets: null };
  const assay = assays?.[0];
  return assay === undefined ? undefined : { result, budgets: assay.budgets };
}
