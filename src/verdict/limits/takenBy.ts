import { hypot } from '../../base/elementary/hypot.ts';
import type { GroupFigures } from '../../figures/harmonicGroups/groupFigures.ts';
import type { WaveFigures } from '../../figures/waveFigures.ts';
import type { HarmonicMethod } from './limitTable.ts';

/**
 * The figures with their harmonics taken as a standard takes them.
 *
 * @param method - `subgroups`: each order with its neighbours, mean square over the record's windows; absent: the
 * figures as they are.
 * @param groups - null where the record holds no window; the figures are then as they are.
 * @returns THD and harmonics replaced, to the orders that both hold; everything else unchanged.
 */
export function takenBy(
  method: HarmonicMethod | undefined,
  figures: WaveFigures,
  groups: GroupFigures | null,
): WaveFigures {
  if (method === undefined || groups === null || figures.thdPercent.value === null) return figures;
  const [first] = groups.all.orders;
  if (first === undefined) return figures;
  const harmonics = groups.all.orders.flatMap(({ order, subgroupRms }) => {
    const fitted = figures.harmonics[order - 1];
    return fitted === undefined
      ? []
      : [{ ...fitted, rms: subgroupRms, percent: (100 * subgroupRms) / first.subgroupRms }];
  });
  const thd = hypot(...harmonics.slice(1).map(({ percent }) => percent));
  return {
    ...figures,
    harmonics,
    thdOrders: harmonics.length,
    thdPercent: { ...figures.thdPercent, value: thd },
  };
}
