import { cos, hypot, sin } from '../base/elementary.ts';
import type { HarmonicFit } from '../signal/harmonicFit.ts';
import { distinctValues, evenSpacing } from '../signal/quantisation.ts';
import { type RoundedSine, roundedSine } from '../signal/roundedSine.ts';

interface FewCodes {
  /** Digitiser step in U; null where there is none to see. */
  readonly stepSize: number | null;
  /** True where each row lies within a code of a rounded sine, and the codes are fewer than MANY_CODES. */
  readonly roundedSine: boolean;
}

/** Codes from the lowest to the highest from which a wave shows its own steps beside the digitiser's. */
export const MANY_CODES = 64;
/**
 * A wave of three levels is a modified sine, one of two a square, however a digitiser rounds them; one of five a staircase:
 * a range that a sine fills with five codes is no setting of a scope, five levels are a usual inverter.
 */
const LEAST_CODES = 6;

/**
 * Whether the few values of a record are the codes of a digitiser that saw a sine, and their step.
 *
 * A staircase switched to the nearest of its levels is a rounded sine, so neither spacing nor timing tells a sine on
 * few codes from one. What tells: a staircase rests at levels evenly about zero whose sine has exactly their height;
 * a digitiser's codes stand where its zero and the sine's size put them.
 *
 * @param stepSize - as stated or seen, in U; null: not known.
 * @param stated - true where the file states it.
 */
export function fewCodes(
  samples: Float64Array,
  fit: HarmonicFit,
  stepSize: number | null,
  stated: boolean,
): FewCodes {
  const other = { stepSize, roundedSine: false };
  const values = distinctValues(samples, MANY_CODES - 1);
  if (values === null || values.length < LEAST_CODES) return other;
  const step = stepSize ?? evenSpacing(values);
  if (step === null) return other;
  const [low, high] = [values[0]!, values.at(-1)!];
  const highest = Math.round((high - low) / step);
  if (highest + 1 < LEAST_CODES || highest + 1 >= MANY_CODES) return other;
  const sine = roundedSine(samples, fit.omega, low, step);
  if (sine === null) return other;
  // A record that flickers between codes shows them to be a digitiser's.
  const once = (2 * highest * fit.omega * samples.length) / (2 * Math.PI);
  const known = stated || sine.crossings > FLICKERING * once;
  // A border is crossed somewhere between two samples.
  const ofSampling = (sine.amplitude * fit.omega) / Math.sqrt(12);
  if (!known && sine.isStaircase) return { stepSize: null, roundedSine: false };
  if (stepSize === null && sine.deviation > hypot(MOST_APART, MOST_DISTORTED * sine.amplitude, ofSampling)) {
    return other;
  }
  return { stepSize: step, roundedSine: isWithinACode(samples, fit.omega, sine, low, step) };
}

/** Times that a border is crossed for each time that a wave without noise crosses it. */
const FLICKERING = 1.3;
/** Codes by which a rounded sine may miss the borders. */
const MOST_APART = 0.06;
/** Of its amplitude, by which its own harmonics may: 8 % of distortion, their root of the mean square. */
const MOST_DISTORTED = 0.06;

/** All rows but one in a thousand within a code of the sine's own. */
function isWithinACode(
  samples: Float64Array,
  omega: number,
  { amplitude, offset, phaseRad }: RoundedSine,
  low: number,
  step: number,
): boolean {
  const centre = (samples.length - 1) / 2;
  const [turnRe, turnIm] = [cos(omega), sin(omega)];
  let [re, im] = [cos(phaseRad - omega * centre), sin(phaseRad - omega * centre)];
  let apart = 0;
  for (let n = 0; n < samples.length; n++) {
    if (Math.abs((samples[n]! - low) / step - offset - amplitude * im) > 1.5) apart++;
    const next = re * turnRe - im * turnIm;
    im = re * turnIm + im * turnRe;
    re = next;
  }
  return apart <= samples.length / 1000;
}
