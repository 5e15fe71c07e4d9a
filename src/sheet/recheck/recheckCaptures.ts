import type { Notice } from '../../base/notice.ts';
import type { Assay } from '../../verdict/assay.ts';
import type { Evidence } from '../evidence/evidence.ts';
import { checkedCaptures } from './checkedCaptures.ts';
import { recheckBench } from './recheckBench.ts';
import { recheckCapture } from './recheckCapture.ts';
import type { CheckedCapture } from './recheckDocument.ts';
import { recheckOverlay } from './recheckOverlay.ts';

export interface RecheckedCaptures {
  readonly carried: readonly CheckedCapture[];
  /** What differs, each in a sentence. */
  readonly differences: readonly Notice[];
}

/**
 * Holds what a sheet carries against its captures, measured again with the options that it carries.
 *
 * @param again - the results of each capture; at least one a capture. None: nothing is held against anything.
 */
export function recheckCaptures(evidence: Evidence, again: readonly (readonly Assay[])[]): RecheckedCaptures {
  const sha256 = new Set(again.flatMap((assays) => assays.map(({ result }) => result.sha256)));
  const carried = checkedCaptures(evidence, sha256);
  if (again.length === 0) return { carried, differences: [] };
  const missing = missingCaptures(carried);
  try {
    return { carried, differences: [...missing, ...differencesOf(evidence, again)] };
  } catch (error) {
    // Somebody's data, with whatever was done to them: what they stumble over here is theirs.
    const reason = error instanceof Error ? error.message : String(error);
    const message = `The data inside it can’t be held against its captures (${reason}).`;
    return { carried, differences: [...missing, { code: 'data.unusable', message }] };
  }
}

function differencesOf(evidence: Evidence, again: readonly (readonly Assay[])[]): readonly Notice[] {
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

/** Of several captures, those that nobody brought: what comes of them was not held against anything. */
function missingCaptures(carried: readonly CheckedCapture[]): readonly Notice[] {
  if (carried.length < 2) return [];
  const missing = carried.filter(({ state }) => state === 'missing');
  return [...new Set(missing.map(({ unit }) => unit))].map((unit) => {
    const files = missing.filter((capture) => capture.unit === unit).map(({ file }) => file);
    const named = files.slice(0, 20).join(', ');
    const more = files.length > 20 ? ` and ${files.length - 20} more` : '';
    const whose = unit === undefined ? 'Not all of its captures' : `${unit}: not all of its captures`;
    const message = `${whose} are there to measure it again; missing: ${named}${more}.`;
    return { code: 'capture.missing', message };
  });
}
