import type { OrderGroups } from './orderGroups.ts';

/** Distortion factors of the group method, each over the fundamental's own line, group or subgroup. */
export interface GroupDistortion {
  /** Of orders 2 to this. */
  readonly highestOrder: number;
  /** THD: single lines. */
  readonly thdRatio: number;
  /** THDG: groups. */
  readonly thdGroupsRatio: number;
  /** THDS: subgroups. */
  readonly thdSubgroupsRatio: number;
}

/**
 * √Σ (Yh / Y1)², h = 2 … H, of single lines, groups and subgroups.
 *
 * @param orders - from order 1 without a hole, at least H.
 * @see IEC 61000-4-7:2002+A1:2008, 3.3 (from memory).
 */
export function groupDistortion(orders: readonly OrderGroups[], highestOrder: number): GroupDistortion {
  const factor = (of: (order: OrderGroups) => number): number => {
    let sum = 0;
    for (let i = 1; i < highestOrder; i++) sum += of(orders[i]!) ** 2;
    return Math.sqrt(sum) / of(orders[0]!);
  };
  return {
    highestOrder,
    thdRatio: factor(({ rms }) => rms),
    thdGroupsRatio: factor(({ groupRms }) => groupRms),
    thdSubgroupsRatio: factor(({ subgroupRms }) => subgroupRms),
  };
}

/**
 * Partial weighted harmonic distortion, √Σ h·(Yh / Y1)², h = 14 … 40, of single lines.
 *
 * @returns ratio, ≥ 0; null where the orders end below 40.
 * @see IEC 61000-4-7:2002+A1:2008, 3.3.4; the orders are those of IEC 61000-3-12 (from memory).
 */
export function partialWeightedDistortion(orders: readonly OrderGroups[]): number | null {
  if (orders.length < 40) return null;
  let sum = 0;
  for (let order = 14; order <= 40; order++) sum += order * (orders[order - 1]!.rms / orders[0]!.rms) ** 2;
  return Math.sqrt(sum);
}
