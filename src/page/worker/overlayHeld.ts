import { compareCaptures } from '../../entry/comparing.ts';
import { captureEvidence, type OverlayEvidence, overlayEvidence } from '../../entry/evidence.ts';
import { type Assay, MeasureError, type ToldOptions } from '../../entry/measuring.ts';
import { version } from '../shipped.ts';
import { type HeldFiles, heldFile } from './heldCaptures.ts';
import type { OverlaySide, Requests } from './requests.ts';

/** Two captures held against each other. @throws MeasureError `file.closed`, `file.unmeasured`. */
export function overlayHeld(
  files: HeldFiles,
  { sides: [ofA, ofB], sameInstrument }: Requests['overlay']['given'],
): OverlayEvidence {
  const [a, b] = [sideOf(files, ofA), sideOf(files, ofB)];
  const result = compareCaptures(a.assay, b.assay, { sameInstrument });
  const carried = ({ assay, options }: typeof a) => captureEvidence(assay, 'wave', options, version);
  return overlayEvidence([carried(a), carried(b)], result, 'budgets', version);
}

function sideOf(
  files: HeldFiles,
  { id, channel }: OverlaySide,
): { readonly assay: Assay; readonly options: ToldOptions } {
  const { name, measured } = heldFile(files, id);
  const assay = measured?.assays[channel];
  if (measured === null || assay === undefined)
    throw new MeasureError('file.unmeasured', `Nothing was measured of ${name} yet.`);
  return { assay, options: measured.options };
}
