import type { ReadCaptureOptions } from '../../capture/readCapture.ts';
import type { Assay } from '../../verdict/assay.ts';
import type { AssayOptions } from '../../verdict/assaying/assayOptions.ts';
import { carryDynamics } from './carryDynamics.ts';
import { carryTrace } from './carryTrace.ts';
import type { CaptureEvidence, CarriedOptions } from './evidence.ts';

/** What was told of a capture, as a sheet carries it. */
export function carryOptions({ claims = [], ...others }: AssayOptions & ReadCaptureOptions): CarriedOptions {
  return { ...others, claims: claims.map(({ text }) => text) };
}

/**
 * What the sheet of a capture carries.
 *
 * @param program - version of the program.
 * @param options - what it was measured with.
 */
export function captureEvidence(
  assay: Assay,
  picture: CaptureEvidence['picture'],
  options: AssayOptions & ReadCaptureOptions,
  program: string,
): CaptureEvidence {
  const { result, method } = assay;
  return {
    ...{ schema: 'sineassay/sheet@1', program, picture },
    options: carryOptions(options),
    ...{ result, method },
    trace: carryTrace(assay.trace),
    dynamics: picture === 'changes' ? carryDynamics(assay) : null,
  };
}
