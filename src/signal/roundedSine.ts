import { atan2, cos, hypot, sin } from '../base/elementary.ts';
import { choleskyFactor } from './choleskyFactor.ts';

/** A sine c + A·sin(ωu + φ) whose values were rounded to codes; all in codes above the lowest that occurs. */
export interface RoundedSine {
  readonly amplitude: number;
  readonly offset: number;
  readonly phaseRad: number;
  /** Root of the mean square by which the sine misses the border between two codes where the record crosses it. */
  readonly deviation: number;
  /** Crossings of borders. */
  readonly crossings: number;
}

/**
 * The sine whose rounding the record would be, from where it goes from code to code: there the sine stands on the
 * border between the two.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param omega - radians a sample.
 * @param lowest - value of the lowest code.
 * @param step - between neighbouring codes, > 0.
 * @returns null with fewer than six crossings.
 */
export function roundedSine(
  samples: Float64Array,
  omega: number,
  lowest: number,
  step: number,
): RoundedSine | null {
  const { turns, borders } = crossingsOf(samples, omega, lowest, step);
  if (borders.length < 6) return null;
  const gram = new Float64Array(9);
  const right = new Float64Array(3);
  borders.forEach((border, i) => {
    const row = [1, cos(turns[i]!), sin(turns[i]!)];
    for (let a = 0; a < 3; a++) {
      right[a]! += row[a]! * border;
      for (let b = 0; b < 3; b++) gram[3 * a + b]! += row[a]! * row[b]!;
    }
  });
  const factor = choleskyFactor({ size: 3, values: gram });
  if (factor === null) return null;
  const [offset, cosine, sine] = factor.solve(right) as unknown as [number, number, number];
  let square = 0;
  borders.forEach((border, i) => {
    square += (offset + cosine * cos(turns[i]!) + sine * sin(turns[i]!) - border) ** 2;
  });
  return {
    amplitude: hypot(cosine, sine),
    offset,
    phaseRad: atan2(cosine, sine),
    deviation: Math.sqrt(square / Math.max(1, borders.length - 3)),
    crossings: borders.length,
  };
}

/** Where the record crosses the borders between codes: the phase ωu of each, and the border in codes. */
function crossingsOf(
  samples: Float64Array,
  omega: number,
  lowest: number,
  step: number,
): { readonly turns: readonly number[]; readonly borders: readonly number[] } {
  const turns: number[] = [];
  const borders: number[] = [];
  const centre = (samples.length - 1) / 2;
  let before = Number.NaN;
  for (let n = 0; n < samples.length && borders.length < MOST_CROSSINGS; n++) {
    const code = Math.round((samples[n]! - lowest) / step);
    const crossed = Math.abs(code - before);
    for (let i = 0; i < crossed; i++) {
      // Several borders between two samples stand evenly between them.
      borders.push(code > before ? before + i + 0.5 : before - i - 0.5);
      turns.push(omega * (n - 1 + (i + 0.5) / crossed - centre));
    }
    before = code;
  }
  return { turns, borders };
}

/** Enough to know a sine to a hundredth of a code. */
const MOST_CROSSINGS = 20_000;
