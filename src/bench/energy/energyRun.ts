import type { Figure } from '../../base/figure.ts';
import type { BudgetedFigure } from '../../figures/uncertainty/budget.ts';
import { withoutBudget } from '../../verdict/assaying/withoutBudgets.ts';
import type { EnergyRun } from '../benchDocument.ts';
import { energyRatios } from './energyRatios.ts';

/** One discharge as told: what a meter counted until the unit shut off. */
export interface ToldEnergy {
  readonly ratedWh: number;
  /** At the battery's side; null: not measured. */
  readonly dcWh: Figure | null;
  /** At the outlet; null: not measured. */
  readonly acWh: Figure | null;
  readonly note?: string;
}

/** A discharge with its usable share, outlet share and conversion efficiency. */
export function energyRun({ ratedWh, dcWh, acWh, note }: ToldEnergy): EnergyRun {
  const ratios = energyRatios({ ratedWh, directWh: dcWh, alternatingWh: acWh });
  const bare = (figure: Figure | BudgetedFigure): Figure => withoutBudget(figure);
  return {
    ...(note === undefined ? {} : { note }),
    ratedWh,
    dcWh: dcWh ?? { value: null, reason: 'the energy at the DC side was not measured' },
    acWh: acWh ?? { value: null, reason: 'the energy at the AC outlet was not measured' },
    usableSharePercent: bare(ratios.usableSharePercent),
    outletSharePercent: bare(ratios.outletSharePercent),
    conversionEfficiencyPercent: bare(ratios.conversionEfficiencyPercent),
  };
}
