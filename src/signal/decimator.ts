import { sin, wholePower } from '../base/elementary.ts';

/** Boxes in the cascade; even, so that its delay is a whole number of samples. */
const BOXES = 6;

/** Thins records out, and tells what its filter does to each frequency. */
interface Decimator {
  /** Sample j of a thinned record stands at `first` + j · factor on the axis of the given samples; 0 or negative. */
  readonly first: number;
  /** Samples of a thinned record. @param length - of the given one. */
  readonly countOf: (length: number) => number;
  /** @param samples - shape N, finite, taken as 0 outside. Not changed. */
  readonly thin: (samples: Float64Array) => Float64Array;
  /** Gain of the filter at ω radians a given sample: divide by it. */
  readonly gainAt: (omega: number) => number;
}

/**
 * Keeps every D-th sample of a record behind a cascade of six moving means of D samples, ends run out.
 *
 * gain(ω) = (sin(Dω/2) / (D·sin(ω/2)))⁶
 *
 * @param factor - D, whole, ≥ 1; 1 gives the record itself.
 * @remarks What lies near 2π/D folds down onto ω with gain(2π/D − ω): for ω ≤ π/4D at most (1/7)⁶ = 9e-6 of it
 * once the gain at ω is divided out. Cost 6 multiplications a given sample.
 * @see E. B. Hogenauer, IEEE Trans. Acoust. Speech Signal Process. 29(2), 1981, 155–162 (from memory).
 */
export function decimator(factor: number): Decimator {
  if (!(Number.isInteger(factor) && factor >= 1)) {
    throw new RangeError(`only whole factors can thin a record, not ${factor}`);
  }
  if (factor === 1)
    return { first: 0, countOf: (length) => length, thin: (samples) => samples, gainAt: () => 1 };
  const taps = boxCascade(factor);
  const delay = (taps.length - 1) / 2;
  const countOf = (length: number): number => Math.floor((length - 1 + 2 * delay) / factor) + 1;
  const thin = (samples: Float64Array): Float64Array => {
    const thinned = new Float64Array(countOf(samples.length));
    for (let j = 0; j < thinned.length; j++) thinned[j] = filtered(samples, j * factor - 2 * delay, taps);
    return thinned;
  };
  return { first: -delay, countOf, thin, gainAt: (omega) => wholePower(boxGain(omega, factor), BOXES) };
}

/** Σ taps[m]·x[from + m], x being 0 outside. */
function filtered(samples: Float64Array, from: number, taps: Float64Array): number {
  const end = Math.min(taps.length, samples.length - from);
  let sum = 0;
  for (let m = Math.max(0, -from); m < end; m++) sum += taps[m]! * samples[from + m]!;
  return sum;
}

function boxGain(omega: number, length: number): number {
  const below = length * sin(omega / 2);
  return Math.abs(below) < 1e-12 ? 1 : sin((length * omega) / 2) / below;
}

/** Taps of the whole cascade: a box convolved with itself, sum 1. */
function boxCascade(length: number): Float64Array {
  let taps = Float64Array.of(1);
  for (let box = 0; box < BOXES; box++) {
    const wider = new Float64Array(taps.length + length - 1);
    for (let i = 0; i < taps.length; i++) {
      for (let j = 0; j < length; j++) wider[i + j]! += taps[i]! / length;
    }
    taps = wider;
  }
  return taps;
}
