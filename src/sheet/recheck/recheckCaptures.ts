import type { Notice } from '../../base/notice.ts';
import type { Assay } from '../../verdict/assay.ts';
import type { Evidence } from '../evidence/evidence.ts';
import { recheckBench } from './recheckBench.ts';
import { recheckCapture } from './recheckCapture.ts';
import { recheckOverlay } from './recheckOverlay.ts';

/**
 * Holds what a sheet carries against its captures, measured again with the options that it carries.
 *
 * @param again - the results of each capture; at least one a capture.
 * @returns what differs, each in a sentence; empty where nothing does, or no capture is given.
 */
export function recheckCaptures(evidence: Evidence, again: readonly (readonly Assay[])[]): readonly Notice[] {
  switch (evidence.picture) {
    case 'overlay':
      return recheckOverlay(evidence, again);
    case 'sweep':
    case 'comparison':
      return recheckBench(
        evidence,
        again.map(([first]) => first!),
      );
    default:
      return again.flatMap((assays) => recheckCapture(evidence, assays));
  }
}
