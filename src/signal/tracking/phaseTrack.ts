import { atan2 } from '../../base/elementary/atan2.ts';
import { cos } from '../../base/elementary/cos.ts';
import { hypot } from '../../base/elementary/hypot.ts';
import { blockMeans } from '../blockMeans.ts';
import { median } from '../median.ts';
import { carriedPhases } from './carriedPhases.ts';
import { type HalfCycleCells, halfCycleCells } from './halfCycleCells.ts';
import { wholeHalfTurns } from './wholeHalfTurns.ts';
import type { ZeroTrack } from './zeroTrack.ts';

/** Half cycles each side of a crossing that its phase is taken from, at most. */
const REACH = 4;
/** Samples a cycle that the phase needs, of any wave. */
const SAMPLES_A_CYCLE = 256;
const PASSES = 8;

/**
 * Follow the phase of the fundamental along a record, by a weighted fit over up to four cycles around every
 * zero.
 *
 * The record is cut into half cycles at the zeros found so far. Each is multiplied by e^(−iθ), θ its own phase
 * running from 0 to π, and averaged; a sine gives a value on one axis whatever its size, so a step in
 * amplitude at a zero turns nothing, and a Hann sum over an even number of them cancels offset and every
 * harmonic. What angle is left moves the zero, until none is. The sum never reaches over a break: it
 * narrows to two half cycles beside one.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param omega - the fundamental to start from, radians a sample, within 20 % throughout.
 * @param breaks - positions in samples at which amplitude, frequency or phase jump. Half cycles without
 * voltage or with a tenth missing count as breaks too.
 * @remarks A jump of the frequency that is not told is blurred over two cycles each way: a zero next to it is
 * then off by up to 0.3 δf/f cycles.
 */
export function phaseTrack(samples: Float64Array, omega: number, breaks: readonly number[] = []): ZeroTrack {
  const period = (2 * Math.PI) / omega;
  const blockLength = Math.max(1, Math.floor(period / SAMPLES_A_CYCLE));
  const centre = (blockLength - 1) / 2;
  const record = blockLength === 1 ? samples : blockMeans(samples, blockLength);
  const jumps = breaks.map((at) => (at - centre) / blockLength);
  const spacing = period / 2 / blockLength;
  const count = Math.ceil(record.length / spacing) + 2;
  let track: ZeroTrack = {
    crossings: Float64Array.from({ length: count }, (_, m) => (m - 0.5) * spacing),
    seen: new Uint8Array(count),
  };
  for (let pass = 0; pass < PASSES; pass++) {
    const { crossings } = track;
    const phases = truePhases(crossings, halfCycleCells(record, crossings), soundCells(crossings, jumps));
    if (phases === null) break;
    track = wholeHalfTurns(crossings, phases.halfTurns, phases.seen, record.length);
    const moved = track.crossings.map((at, m) => Math.abs(at - (crossings[m] ?? at)));
    // A thousandth of a sample: a part in 10⁵ of a cycle.
    if (track.crossings.length === crossings.length && moved.every((by) => by < 1e-3)) break;
  }
  return { crossings: track.crossings.map((at) => at * blockLength + centre), seen: track.seen };
}

/** 1 for the half cycles that no jump comes nearer than a quarter of their length. */
function soundCells(crossings: Float64Array, jumps: readonly number[]): Uint8Array {
  return Uint8Array.from({ length: crossings.length - 1 }, (_, m) => {
    const [from, to] = [crossings[m]!, crossings[m + 1]!];
    const margin = (to - from) / 4;
    return jumps.some((at) => at > from - margin && at < to + margin) ? 0 : 1;
  });
}

interface Phases {
  /** Of the fundamental at each crossing tried, in half turns, ascending. */
  readonly halfTurns: Float64Array;
  readonly seen: Uint8Array;
}

/** What the phase at every crossing tried really is; null where none shows one. */
function truePhases(crossings: Float64Array, cells: HalfCycleCells, sound: Uint8Array): Phases | null {
  const { re, im, whole } = cells;
  const sizes = re.map((x, m) => (whole[m] === 1 ? hypot(x, im[m]!) : 0));
  const largest = sizes.reduce((a, b) => Math.max(a, b), 0);
  if (largest === 0) return null;
  // A fifth of the usual half cycle: what is less is no voltage, and its phase is noise.
  const least = 0.2 * median(sizes.filter((size) => size >= 0.2 * largest));
  const usable = (cell: number): boolean => sound[cell] === 1 && sizes[cell]! >= least;
  const halfTurns = new Float64Array(re.length + 1);
  const seen = new Uint8Array(re.length + 1);
  for (let m = 1; m < re.length; m++) {
    let reach = 0;
    while (reach < REACH && usable(m - 1 - reach) && usable(m + reach)) reach++;
    if (reach === 0) continue;
    let [sumRe, sumIm] = [0, 0];
    for (let cell = m - reach; cell < m + reach; cell++) {
      const hann = cos((Math.PI * (cell + 0.5 - m)) / (2 * reach)) ** 2;
      // From half cycle to half cycle the sign of the wave turns, and so does that of e^(−iθ).
      const weight = cell % 2 === 0 ? hann : -hann;
      sumRe += weight * re[cell]!;
      sumIm += weight * im[cell]!;
    }
    seen[m] = 1;
    // sin(θ + δ) leaves ½·(sin δ − i·cos δ).
    halfTurns[m] = m + atan2(sumRe, -sumIm) / Math.PI;
  }
  return seen.includes(1) ? { halfTurns: carriedPhases(crossings, halfTurns, seen), seen } : null;
}
