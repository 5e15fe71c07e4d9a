import type { ReadCaptureOptions } from '../../capture/readCapture.ts';
import type { Assay } from '../../verdict/assay.ts';
import type { AssayOptions } from '../../verdict/assaying/assayOptions.ts';
import { fileName } from '../answer/fileName.ts';
import { carryDynamics } from './carryDynamics.ts';
import { carryTrace } from './carryTrace.ts';
import type { CaptureEvidence, CardEvidence, CardTheme, CarriedOptions, OneCapture } from './evidence.ts';
import { publishedOptions } from './published.ts';

/** What was told of a capture, as a sheet carries it. */
export function carryOptions({ claims = [], ...others }: AssayOptions & ReadCaptureOptions): CarriedOptions {
  return { ...others, claims: claims.map(({ text }) => text) };
}

/**
 * What the sheet of a capture carries.
 *
 * @param options - what it was measured with.
 * @param program - version of the program.
 */
export function captureEvidence(
  assay: Assay,
  picture: CaptureEvidence['picture'],
  options: AssayOptions & ReadCaptureOptions,
  program: string,
): CaptureEvidence {
  const dynamics = picture === 'changes' ? carryDynamics(assay) : null;
  return { ...carried(assay, options, program), picture, dynamics };
}

/** What the card of a capture carries. */
export function cardEvidence(
  assay: Assay,
  theme: CardTheme,
  options: AssayOptions & ReadCaptureOptions,
  program: string,
): CardEvidence {
  return { ...carried(assay, options, program), picture: 'card', theme, dynamics: carryDynamics(assay) };
}

function carried(
  { result, method, trace }: Assay,
  options: AssayOptions & ReadCaptureOptions,
  program: string,
): Omit<OneCapture, 'dynamics'> {
  return {
    ...{ schema: 'sineassay/sheet@1', program },
    options: publishedOptions(carryOptions(options), result),
    ...{ result: { ...result, file: fileName(result.file) }, method },
    trace: carryTrace(trace),
  };
}
