/** Probe, divider and transformer ratios in common use. */
export const ROUND_RATIOS: readonly number[] = [10, 20, 50, 100, 200, 500, 1000];

/**
 * The round ratio, or its inverse, that a factor is near.
 *
 * @param factor - positive.
 * @param reach - how far it may lie from the ratio, as a fraction of it; below 0.4, so that one fits at most.
 * @returns null where none is near; 1 is no round ratio.
 * @example roundRatioNear(98, 0.06) // 100
 */
export function roundRatioNear(factor: number, reach: number): number | null {
  const near = ROUND_RATIOS.flatMap((ratio) => [ratio, 1 / ratio]).find(
    (ratio) => Math.abs(factor / ratio - 1) <= reach,
  );
  return near ?? null;
}
