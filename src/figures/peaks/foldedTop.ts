import { log } from '../../base/elementary/log.ts';
import type { FoldedCycle } from '../../signal/foldedCycle.ts';
import { gaussianNumbers } from '../../signal/synthesis/gaussianNumbers.ts';
import { randomNumbers } from '../../signal/synthesis/randomNumbers.ts';
import { oneSidedLines } from './oneSidedLines.ts';

/** The highest value of a folded cycle, without what noise adds to a maximum. */
export interface FoldedTop {
  /** In U. */
  readonly value: number;
  /** Standard deviation of what noise, and the doubt about its excess, leave in it, in U. */
  readonly scatter: number;
  /** What may lie between two points beside it: the slope there over the widest gap, in U, ≥ 0. */
  readonly betweenPoints: number;
  /** What it changes by at a third of the width, in U, ≥ 0. */
  readonly bySmoothing: number;
}

/** Points of a line, from those that show the narrowest top on. */
const REACHES = [4, 12, 36] as const;
/** Repeats of the noise. */
const REPEATS = 6;
/** Standard deviations that two widths may differ by and still see the same top. */
const SAME = 1.5;
/** How far the excess itself is known: the smoothed record that noise is put on holds some already. */
const EXCESS_DOUBT = 0.5;

/**
 * The highest point of a folded cycle smoothed by one-sided lines, less the mean excess that the same procedure has on
 * noise of the record's size, drawn from a fixed seed.
 *
 * @param noise - standard deviation of one sample, in U.
 * @remarks The widest lines whose top agrees with that of a third of their width: on a flat top they average noise away, on
 * one that rings they stay as short as the ringing. It is never under what the highest point and the noise allow.
 */
export function foldedTop(cycle: FoldedCycle, noise: number): FoldedTop {
  let kept = topAt(cycle, noise, REACHES[0]);
  let bySmoothing = 0;
  let isShortest = true;
  for (const reach of REACHES.slice(1)) {
    if (reach > cycle.phases.length / 8) break;
    const wider = topAt(cycle, noise, reach);
    const change = Math.abs(wider.value - kept.value);
    const isSame = change <= SAME * kept.scatter + 1e-4 * Math.abs(kept.value);
    // What a line cuts off a top grows with the square of its length: of the change, an eighth lies in the shorter.
    if (isSame) bySmoothing = change;
    else if (isShortest) bySmoothing = change / 4;
    if (!isSame) break;
    isShortest = false;
    kept = wider;
  }
  return { ...kept, value: Math.max(kept.value, leastTop(cycle, noise)), bySmoothing };
}

/** The highest of the points, each less what noise lifts the highest of so many by and two deviations more. */
function leastTop({ values, weights }: FoldedCycle, noise: number): number {
  const lifted = (Math.sqrt(2 * log(values.length)) + 2) * noise;
  return values.reduce(
    (most, value, i) => Math.max(most, value - lifted / Math.sqrt(weights[i]!)),
    -Infinity,
  );
}

function topAt(cycle: FoldedCycle, noise: number, reach: number): Omit<FoldedTop, 'bySmoothing'> {
  const { weights, values } = cycle;
  const linesOf = oneSidedLines(cycle, reach);
  const seen = linesOf(values);
  const smooth = new Float64Array(values.length);
  let [best, slope] = [0, 0];
  for (let i = 0; i < values.length; i++) {
    const line = seen(i);
    smooth[i] = line.value;
    if (i > 0 && line.value <= smooth[best]!) continue;
    best = i;
    slope = line.slope;
  }
  const top = smooth[best]!;
  const betweenPoints = Math.abs(slope) * gapBeside(cycle, best);
  if (noise === 0) return { value: top, scatter: 0, betweenPoints };
  // Nothing farther below than noise reaches can become the highest.
  const near = Array.from(smooth.keys()).filter((i) => smooth[i]! > top - NOISE_REACHES * noise);
  const deviations = weights.map((weight) => noise / Math.sqrt(weight));
  const noisy = new Float64Array(values.length);
  const normal = drawnNoise();
  let sum = 0;
  let square = 0;
  for (let repeat = 0; repeat < REPEATS; repeat++) {
    // From another place of the table each time.
    const from = repeat * 1607 + reach;
    for (let i = 0; i < noisy.length; i++) {
      noisy[i] = smooth[i]! + deviations[i]! * normal[(from + i) & (DRAWN - 1)]!;
    }
    const again = linesOf(noisy);
    let most = Number.NEGATIVE_INFINITY;
    for (const i of near) most = Math.max(most, again(i).value);
    sum += most - top;
    square += (most - top) ** 2;
  }
  const excess = sum / REPEATS;
  const variance = Math.max(0, square / REPEATS - excess * excess) + (EXCESS_DOUBT * excess) ** 2;
  return { value: top - excess, scatter: Math.sqrt(variance), betweenPoints };
}

/** The widest gap between the points around one, in cycles. */
function gapBeside({ phases }: FoldedCycle, point: number): number {
  const count = phases.length;
  let widest = 0;
  for (let i = point - BESIDE; i < point + BESIDE; i++) {
    const gap = phases[(i + 1 + count) % count]! - phases[(i + count) % count]!;
    widest = Math.max(widest, gap - Math.floor(gap));
  }
  return widest;
}

/** Points on either side of the highest that the wave's own may stand between. */
const BESIDE = 1;

/** Standard deviations of one sample's noise. */
const NOISE_REACHES = 4;
/** Numbers of the table of noise; a power of two. */
const DRAWN = 2 ** 14;
let drawn: Float64Array | null = null;

/** Normal numbers of a fixed seed, drawn once: the same record has the same figures wherever it is measured. */
function drawnNoise(): Float64Array {
  if (drawn === null) {
    const normal = gaussianNumbers(randomNumbers(1));
    drawn = Float64Array.from({ length: DRAWN }, normal);
  }
  return drawn;
}
