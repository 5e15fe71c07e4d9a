import { asin, atan2, cos, hypot, sin } from '../base/elementary.ts';
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
  /**
   * Whether a staircase that is switched at the nearest of its levels, as high as the codes that occur and evenly about
   * zero, would have each of its switches between the same two samples.
   */
  readonly isStaircase: boolean;
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
  const crossings = crossingsOf(samples, omega, lowest, step);
  const { turns, borders } = crossings;
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
  const phaseRad = atan2(cosine, sine);
  return {
    amplitude: hypot(cosine, sine),
    offset,
    phaseRad,
    deviation: Math.sqrt(square / Math.max(1, borders.length - 3)),
    crossings: borders.length,
    isStaircase: areOfStaircase(crossings, omega, phaseRad),
  };
}

/** To which a staircase's height is told. */
const OF_HEIGHT = 1e-4;

/**
 * Whether all switches lie about those of the staircase as if each stood somewhere between two samples, for some start and
 * some frequency about the one that was fitted.
 */
function areOfStaircase({ borders, middles, isRise }: Crossings, omega: number, phaseRad: number): boolean {
  const half = (borders.reduce((most, border) => Math.max(most, border), 0) + 0.5) / 2;
  const late = borders.map((border, i) => {
    const angle = asin((border - half) / half);
    const turn = middles[i]! + phaseRad - (isRise[i]! ? angle : Math.PI - angle);
    return (turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI))) / omega;
  });
  const spread = (slope: number): number => {
    let [earliest, latest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let i = 0; i < late.length; i++) {
      const left = late[i]! - slope * middles[i]!;
      if (left < earliest) earliest = left;
      if (left > latest) latest = left;
    }
    return latest - earliest;
  };
  // The spread is convex in the slope, and one sample over the record is more than the fit's frequency is off by.
  const reach = 1 / Math.max(middles.at(-1)!, -middles[0]!);
  let [low, high] = [-reach, reach];
  for (let step = 0; step < SLOPE_STEPS; step++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (spread(a) <= spread(b)) high = b;
    else low = a;
  }
  // So much later the outermost border is reached, where a sine of that height is slowest: half·cos(asin((half − ½) / half)).
  const beside = (OF_HEIGHT * (half - 0.5)) / (Math.sqrt(half - 0.25) * omega);
  return spread((low + high) / 2) <= 1 + 2 * beside;
}

/** (2/3)^20: a three-thousandth of a sample. */
const SLOPE_STEPS = 20;

interface Crossings {
  /** The phase ωu of each. */
  readonly turns: readonly number[];
  /** In codes above the lowest. */
  readonly borders: readonly number[];
  /** The phase half-way between the two samples. */
  readonly middles: readonly number[];
  readonly isRise: readonly boolean[];
}

/** Where the record crosses the borders between codes. */
function crossingsOf(samples: Float64Array, omega: number, lowest: number, step: number): Crossings {
  const turns: number[] = [];
  const borders: number[] = [];
  const middles: number[] = [];
  const isRise: boolean[] = [];
  const centre = (samples.length - 1) / 2;
  let before = Number.NaN;
  for (let n = 0; n < samples.length && borders.length < MOST_CROSSINGS; n++) {
    const code = Math.round((samples[n]! - lowest) / step);
    const crossed = Math.abs(code - before);
    for (let i = 0; i < crossed; i++) {
      // Several borders between two samples stand evenly between them.
      borders.push(code > before ? before + i + 0.5 : before - i - 0.5);
      turns.push(omega * (n - 1 + (i + 0.5) / crossed - centre));
      middles.push(omega * (n - 0.5 - centre));
      isRise.push(code > before);
    }
    before = code;
  }
  return { turns, borders, middles, isRise };
}

/** Enough to know a sine to a hundredth of a code. */
const MOST_CROSSINGS = 20_000;
