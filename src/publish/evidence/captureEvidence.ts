import type { Assay, Trace, WordedAssay } from '../../assay/assay.ts';
import type { AssayOptions } from '../../assay/assayOptions.ts';
import { decimalExponent } from '../../base/elementary.ts';
import type { CompareDocument } from '../../bench/compare/compareDocument.ts';
import { columnExtremes } from '../../draw/columnExtremes.ts';
import {
  type CaptureEvidence,
  type CardEvidence,
  type CardTheme,
  type CarriedCapture,
  type CarriedDynamics,
  type CarriedOptions,
  type CarriedTrace,
  type CarriedUnit,
  type Evidence,
  type OneCapture,
  type OverlayEvidence,
  orNull,
} from '../../draw/evidence.ts';
import { instantSpan, periodOf, type StepSubject, stepSubject } from '../../draw/step/stepPicture.ts';
import { fileName } from '../../words/text.ts';
import { worded } from '../../words/worded.ts';
import { publishedComparison, publishedOptions } from './published.ts';

/** What was told of a capture, as a sheet carries it. */
export function carryOptions({ claims = [], ...others }: AssayOptions): CarriedOptions {
  return { ...others, claims: claims.map(({ text }) => text) };
}

/**
 * What the sheet of a capture carries.
 *
 * @param options - what it was measured with.
 * @param program - version of the program.
 */
export function captureEvidence(
  assay: Assay | WordedAssay,
  picture: CaptureEvidence['picture'],
  options: AssayOptions,
  program: string,
): CaptureEvidence {
  const dynamics = picture === 'changes' ? carryDynamics(assay) : null;
  return { ...carried(assay, options, program), picture, dynamics };
}

/** What the card of a capture carries. */
export function cardEvidence(
  assay: Assay | WordedAssay,
  theme: CardTheme,
  options: AssayOptions,
  program: string,
): CardEvidence {
  return { ...carried(assay, options, program), picture: 'card', theme, dynamics: carryDynamics(assay) };
}

function carried(
  assay: Assay | WordedAssay,
  options: AssayOptions,
  program: string,
): Omit<OneCapture, 'dynamics'> {
  const { result, method } = worded({ result: assay.result, method: assay.method });
  return {
    ...{ schema: 'sineassay/sheet@1', program },
    options: publishedOptions(carryOptions(options), result),
    ...{ result: { ...result, file: fileName(result.file) }, method },
    trace: carryTrace(assay.trace),
  };
}

/** Every capture that stands behind a sheet, with what it takes to measure it again. */
export function carriedCaptures(evidence: Evidence): readonly CarriedCapture[] {
  switch (evidence.picture) {
    case 'overlay':
      return evidence.sides.map(ofOne);
    case 'sweep':
    case 'comparison':
      return capturesOfUnits(evidence.told);
    default:
      return [ofOne(evidence)];
  }
}

/** Every capture that stands behind the results of units. */
export function capturesOfUnits(told: readonly CarriedUnit[]): readonly CarriedCapture[] {
  return told.flatMap(({ sweep, steps, transfers }) => [...sweep, ...steps, ...transfers]);
}

function ofOne({ result: { file, sha256 }, options }: OneCapture): CarriedCapture {
  return { file, sha256, options };
}

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

const columns = 1000;
const digits = 5;

/** What changes along a record as a sheet carries it; of the voltage itself only what is looked at closely. */
export function carryDynamics(assay: Assay | WordedAssay): CarriedDynamics | null {
  const { result, dynamics } = worded({ result: assay.result, dynamics: assay.dynamics });
  if (dynamics === null) return null;
  const { timeS, rmsHalfCycle, steps, events, curves, distortion } = dynamics;
  return {
    ...{ steps, events, curves, distortion },
    timeS: roundedTo(timeS, digits + 1),
    rmsHalfCycle: roundedTo(rmsHalfCycle, digits),
    instantaneous: instant(dynamics, stepSubject(result, dynamics), periodOf(result)),
  };
}

function instant(
  dynamics: NonNullable<WordedAssay['dynamics']>,
  subject: StepSubject,
  periodS: number,
): CarriedDynamics['instantaneous'] {
  const span = instantSpan(subject, periodS);
  if (span === null || dynamics.instantaneous === null) return null;
  const { timeS, volts } = dynamics.instantaneous;
  const first = timeS.findIndex((t) => t >= span.fromS);
  const beyond = timeS.findIndex((t) => t > span.toS);
  if (first < 0) return { timeS: [], volts: [] };
  const t = timeS.subarray(first, beyond < 0 ? timeS.length : beyond);
  const v = volts.subarray(first, first + t.length);
  const kept = columnExtremes(t, [v], columns);
  return {
    timeS: roundedTo(
      Float64Array.from(kept, (i) => t[i]!),
      digits + 1,
    ),
    volts: roundedTo(
      Float64Array.from(kept, (i) => v[i]!),
      digits,
    ).map(orNull),
  };
}

/** The trace as a sheet carries it: the extremes of wave and residual in each column, rounded. */
export function carryTrace({ timeS, wave, ideal, residual, unit }: Trace): CarriedTrace {
  const kept = columnExtremes(timeS, [wave, residual], columns);
  const at = (values: Float64Array): Float64Array => Float64Array.from(kept, (i) => values[i]!);
  return {
    timeS: roundedTo(at(timeS), digits + 1),
    wave: roundedTo(at(wave), digits).map(orNull),
    ideal: roundedTo(at(ideal), digits),
    unit,
  };
}

/**
 * Values rounded to so many decimal digits of the range that they span, so that their text is short and the
 * picture the same.
 *
 * @param values - shape N; NaN stays.
 * @param digits - 5: to a step between a hundred-thousandth and a millionth of the range.
 */
export function roundedTo(values: ArrayLike<number>, digits: number): number[] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const range = high - low;
  const decimals = range > 0 ? digits - decimalExponent(range) : 12;
  const kept = Math.min(100, Math.max(0, decimals));
  return Array.from(values, (value) => Number(value.toFixed(kept)));
}
