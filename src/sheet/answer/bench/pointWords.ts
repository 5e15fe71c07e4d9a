import type { BenchPoint } from '../../../bench/benchDocument.ts';

/** The kind of wave at a load, with what sets it apart; nothing where no steady stretch was seen under it. */
export function pointKind({ kind, atTheEdge, rmsV, lost, loadKind }: BenchPoint): string {
  if (rmsV.value === null && lost !== undefined) return '–';
  return kind + (atTheEdge ? ', at the edge' : '') + (loadKind === undefined ? '' : `; ${loadKind} load`);
}

/** What stands in place of an outcome where the output was lost or the load lies above the rating; null: neither. */
export function pointState({ lost, overload }: BenchPoint): string | null {
  return lost ?? (overload ? 'overload' : null);
}
