import { exp } from '../../base/elementary.ts';
import type { Residual } from '../../signal/residual.ts';
import { extremes } from '../../signal/statistics.ts';

/** How often each code of a digitiser occurs between the lowest and the highest seen. */
export interface CodeCounts {
  /** Shape L ≥ 1: samples on code i; in a long record, of those in its middle. */
  readonly observed: Uint32Array;
  /** Shape L: samples that the model puts into the middle half of code i's cell. */
  readonly expected: Uint32Array;
}

/** Samples of the residual that are worked out at once. */
const RUN = 2 ** 12;
/** Samples counted, from the middle of the record. */
const MOST_SAMPLES = 2 ** 18;
/** More codes than any converter has. */
const MOST_CODES = 2 ** 20;

/**
 * Counts of the codes that a record holds, beside those its model asks for.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @param residual - of N samples: sample − model.
 * @param stepSize - q > 0, in the unit of the samples.
 * @returns null where the samples stand on no grid of that step (averaged, filtered or computed records).
 * @remarks Only the middle half of a cell is expected: near its edges the model's own error decides, and a wave
 * locked to the sample clock would ask for one code for ever and get its neighbour.
 */
export function codeCounts(samples: Float64Array, residual: Residual, stepSize: number): CodeCounts | null {
  const { min: lowest, max: highest, count } = extremes(samples);
  const codes = Math.round((highest - lowest) / stepSize) + 1;
  if (codes > MOST_CODES) return null;
  const observed = new Uint32Array(codes);
  const expected = new Uint32Array(codes);
  let offGrid = 0;
  const perStep = 1 / stepSize;
  const room = new Float64Array(RUN);
  // What piles up or is missing shows in some hundred thousand samples as well as in all.
  const used = Math.min(samples.length, MOST_SAMPLES);
  const first = (samples.length - used) >> 1;
  for (let from = first; from < first + used; from += RUN) {
    const left = residual.stretch(from, Math.min(first + used, from + RUN), room);
    for (let i = 0; i < left.length; i++) {
      const place = (samples[from + i]! - lowest) * perStep;
      if (Number.isNaN(place)) continue;
      const code = Math.floor(place + 0.5);
      offGrid += Math.abs(place - code);
      observed[code]!++;
      const model = place - left[i]! * perStep;
      const asked = Math.floor(model + 0.5);
      if (asked >= 0 && asked < codes && Math.abs(model - asked) < 0.25) expected[asked]!++;
    }
  }
  // Values on no grid stand a quarter of a step off in the mean; printed digits move them by less than a tenth.
  return offGrid > 0.1 * Math.min(count, used) ? null : { observed, expected };
}

/** Times the model must ask for a code before its absence is no chance: e⁻¹⁰ = 5e-5. */
const ASKED_OFTEN = 10;

/** Noise of more codes than this hides a missing one, and harm that it might do. */
const NOISIEST_CODES = 8;

/**
 * Codes between the extremes that never occur though the wave passes them: an ideal converter gives none.
 *
 * @param noiseCodes - standard deviation of the noise, in codes: it carries samples off the code that the model asks
 * for, so that one asked for by a wave locked to the sample clock may stay empty by chance.
 * @returns their number; 0 where they stand at even distances of more than three codes: then values of a coarser
 * step were printed on a grid a little finer, which skips one every so often.
 * @remarks A converter that loses every 64th code at its carries hides behind that.
 * @see IEEE Std 1241-2010, missing codes, by the histogram method (from memory).
 */
export function missingCodes({ observed, expected }: CodeCounts, noiseCodes: number): number {
  if (noiseCodes > NOISIEST_CODES) return 0;
  const weights = spread(noiseCodes);
  const missing: number[] = [];
  for (let i = 1; i < observed.length - 1; i++) {
    if (observed[i] === 0 && askedFor(expected, i, weights) >= ASKED_OFTEN) missing.push(i);
  }
  return isEven(missing) ? 0 : missing.length;
}

/** Shares of a code's samples that normal noise leaves on it, on its neighbours and so on; they sum to 1 over both sides. */
function spread(noiseCodes: number): readonly number[] {
  const reach = Math.ceil(4 * noiseCodes);
  const sizes = Array.from({ length: reach + 1 }, (_, k) =>
    k === 0 ? 1 : exp(-0.5 * (k / noiseCodes) ** 2),
  );
  const total = sizes.reduce((sum, size, k) => sum + (k === 0 ? size : 2 * size), 0);
  return sizes.map((size) => size / total);
}

/** Samples that the model puts on code i once noise has spread them. */
function askedFor(expected: Uint32Array, i: number, weights: readonly number[]): number {
  let asked = 0;
  for (let k = 1 - weights.length; k < weights.length; k++)
    asked += weights[Math.abs(k)]! * (expected[i + k] ?? 0);
  return asked;
}

/** Three or more, all equally far apart to one code. */
function isEven(codes: readonly number[]): boolean {
  if (codes.length < 3) return false;
  const distances = codes.slice(1).map((code, i) => code - codes[i]!);
  const [shortest, longest] = [Math.min(...distances), Math.max(...distances)];
  return shortest > 3 && longest - shortest <= 1;
}
