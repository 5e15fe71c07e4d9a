import type { BenchPoint } from '../benchDocument.ts';

/** A capture whose load is known, in W. */
export interface LoadedPoint {
  readonly point: BenchPoint;
  readonly loadW: number;
}

/** The captures of known load, by rising load. */
export function byLoad(points: readonly BenchPoint[]): readonly LoadedPoint[] {
  return points
    .flatMap((point) => (point.loadW.value === null ? [] : [{ point, loadW: point.loadW.value }]))
    .sort((a, b) => a.loadW - b.loadW);
}

/** A load counts as none up to this share of the full load. */
const NO_LOAD_SHARE = 0.05;

/**
 * No load and full load of a sweep: the lowest load, and the highest that is no overload and was held.
 *
 * @returns a reason in words where one of them was not captured.
 */
export function sweepEnds(
  points: readonly BenchPoint[],
): { readonly noLoad: LoadedPoint; readonly fullLoad: LoadedPoint } | { readonly reason: string } {
  const loaded = byLoad(points).filter(
    ({ point }) => point.rmsV.value !== null && !point.overload && point.lost === undefined,
  );
  const [noLoad] = loaded;
  const fullLoad = loaded.at(-1);
  if (noLoad === undefined || fullLoad === undefined) return { reason: 'no capture of a known load' };
  if (noLoad.loadW === fullLoad.loadW) return { reason: 'captures at one load only' };
  if (noLoad.loadW > NO_LOAD_SHARE * fullLoad.loadW) return { reason: 'no capture without load' };
  return { noLoad, fullLoad };
}
