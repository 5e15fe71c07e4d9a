import { distinctValues } from './distinctValues.ts';
import { evenSpacing } from './evenSpacing.ts';

/**
 * The step between neighbouring codes of a digitiser, read off the record: the smallest distance between
 * values that occur, when all of them stand on one grid of that distance.
 *
 * @param samples - shape N; NaN marks a missing sample. Not changed.
 * @returns the step in the unit of the samples, or null where the values stand on no grid coarser than
 * 1/65536 of their range (float data, averaged or filtered records), or are few and the record doesn't flicker
 * between them: then they may be the wave's own levels, under twenty always, up to sixty-three where their spacing
 * is only nearly even, as that of levels rounded to a finer grid is.
 * @remarks A printed decimal grid counts as a grid: it bounds the resolution just the same. Codes that
 * never occur may make it a multiple of the true step, on waves with few levels only.
 */
export function quantisationStep(samples: Float64Array): number | null {
  const values = distinctValues(samples);
  if (values === null || values.length < 2) return null;
  if (values.length < FEW_VALUES && !flickers(samples))
    return values.length < 20 ? null : evenSpacing(values);
  const range = values.at(-1)! - values[0]!;
  const printed = 1e-6 * range;
  const distances: number[] = [];
  for (let i = 1; i < values.length; i++) {
    const distance = values[i]! - values[i - 1]!;
    if (distance > printed) distances.push(distance);
  }
  distances.sort((a, b) => a - b);
  const smallest = distances[0]!;
  if (range / smallest > 65_536) return null;
  // Exports print a few digits, so codes stand off their grid by a little: a tenth of a step is allowed.
  let onGrid = 0;
  for (const distance of distances) {
    const steps = distance / smallest;
    if (Math.abs(steps - Math.round(steps)) < 0.1) onGrid++;
  }
  if (onGrid < 0.95 * distances.length) return null;
  // Long distances average the printed digits out of the step.
  return range / Math.round(range / smallest);
}

/** Values under which they may be the levels of a staircase. */
const FEW_VALUES = 64;

/** Noise carries a signal to and fro between neighbouring codes; a wave's own levels turn back twice a cycle. */
function flickers(samples: Float64Array): boolean {
  let [last, way, turns] = [Number.NaN, 0, 0];
  for (const x of samples) {
    if (Number.isNaN(x)) continue;
    const step = Math.sign(x - last);
    if (step !== 0 && !Number.isNaN(step)) {
      if (way !== 0 && step !== way) turns++;
      way = step;
    }
    last = x;
  }
  return turns > 0.03 * samples.length;
}
