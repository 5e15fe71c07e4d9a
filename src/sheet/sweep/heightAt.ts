import { heightOf } from './heightOf.ts';
import type { LoadPoint } from './quantityAgainstLoad.ts';

/**
 * Height of the line through the points at a load, straight between its neighbours.
 *
 * @param points - ascending in load, at least one.
 */
export function heightAt(points: readonly LoadPoint[], loadW: number): number {
  const after = points.find((point) => point.loadW >= loadW) ?? points.at(-1)!;
  const before = [...points].reverse().find((point) => point.loadW <= loadW) ?? points[0]!;
  const width = after.loadW - before.loadW;
  const share = width > 0 ? (loadW - before.loadW) / width : 0;
  return heightOf(before.figure) + share * (heightOf(after.figure) - heightOf(before.figure));
}
