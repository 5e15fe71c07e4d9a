import { cos, sin } from '../base/elementary.ts';
import { MINIMUM_CYCLES } from '../signal/recordParts.ts';

/** What outlets give, Hz. */
const OUTLETS_HZ = [50, 60, 400];
/** Fewer may lie on a line by chance. */
const LEAST_SAMPLES = 8;
/** Of what a straight line leaves: a sine about zero that leaves less is what the record is a piece of. */
const BETTER = 0.5;

/**
 * How much of an outlet's cycle a record is, where it is a piece of one: not a direct voltage that moves.
 *
 * A sine about zero, a·cos ωt + b·sin ωt, has as many numbers to fit as a straight line. Where it leaves far less, the
 * record bends as only a wave of that size and frequency does, x″ = −ω²x; over what is too short to tell both leave the same.
 *
 * @param samples - shape N; NaN marks a missing sample.
 * @returns cycles, under MINIMUM_CYCLES; null where it is no such piece, or too short to tell.
 */
export function mainsFragmentCycles(samples: Float64Array, intervalS: number): number | null {
  const middle = (samples.length - 1) / 2;
  const cyclesAt = (hertz: number): number => samples.length * intervalS * hertz;
  const possible = OUTLETS_HZ.filter((hertz) => cyclesAt(hertz) < MINIMUM_CYCLES);
  if (possible.length === 0 || samples.length < LEAST_SAMPLES) return null;
  const ofLine = squaresLeft(
    samples,
    () => 1,
    (n) => n - middle,
  );
  const ofSine = possible.map((hertz) => {
    const omega = 2 * Math.PI * hertz * intervalS;
    return squaresLeft(
      samples,
      (n) => cos(omega * (n - middle)),
      (n) => sin(omega * (n - middle)),
    );
  });
  const least = Math.min(...ofSine);
  return least < BETTER ** 2 * ofLine ? cyclesAt(possible[ofSine.indexOf(least)]!) : null;
}

/** Sum of squares that the best a·first + b·second leaves of the samples. */
function squaresLeft(
  samples: Float64Array,
  first: (n: number) => number,
  second: (n: number) => number,
): number {
  let [ff, fs, ss, fx, sx, xx] = [0, 0, 0, 0, 0, 0];
  for (let n = 0; n < samples.length; n++) {
    const x = samples[n]!;
    if (Number.isNaN(x)) continue;
    const [f, s] = [first(n), second(n)];
    ff += f * f;
    fs += f * s;
    ss += s * s;
    fx += f * x;
    sx += s * x;
    xx += x * x;
  }
  const determinant = ff * ss - fs * fs;
  if (!(determinant > 0)) return xx;
  const a = (fx * ss - sx * fs) / determinant;
  const b = (sx * ff - fx * fs) / determinant;
  return Math.max(0, xx - a * fx - b * sx);
}
