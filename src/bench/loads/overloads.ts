import type { BenchOverload } from '../benchDocument.ts';
import { isAbove, type ShownLoad } from './shownLoad.ts';

/**
 * The loads that went too far: above the rating, or under which the output was lost; by rising load, those of
 * unknown load last.
 *
 * @param ratedW - null: not told, and no load is called above it.
 */
export function overloads(loads: readonly ShownLoad[], ratedW: number | null): readonly BenchOverload[] {
  const size = ({ loadW }: ShownLoad): number => loadW.value ?? Number.MAX_VALUE;
  return loads
    .map((load) => ({ load, aboveRating: ratedW === null ? null : isAbove(load.loadW, ratedW) }))
    .filter(({ load, aboveRating }) => aboveRating === true || load.loss !== null)
    .sort((a, b) => size(a.load) - size(b.load))
    .map(({ load: { loss, loadFrom, rmsV, ...rest }, aboveRating }) => ({
      ...rest,
      ...(loadFrom === 'unknown' ? {} : { loadFrom }),
      aboveRating,
      lost: loss !== null,
      seen: loss?.words ?? 'held to the end of the record',
      rmsV,
    }));
}
