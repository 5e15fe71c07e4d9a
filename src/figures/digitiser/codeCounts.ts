import { extremes } from '../../signal/extremes.ts';
import type { Residual } from '../../signal/residual.ts';

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
