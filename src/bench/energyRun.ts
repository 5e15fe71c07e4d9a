import { withoutBudget } from '../assay/channelFigures.ts';
import type { Figure } from '../base/figure.ts';
import type { BudgetedFigure } from '../measure/doubt/budget.ts';
import { quotientPercent } from '../measure/power/conversionEfficiency.ts';
import type { EnergyRun } from './benchDocument.ts';
import { lacking } from './reasons.ts';

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
    dcWh: dcWh ?? lacking({ code: 'energy.noneAt', side: 'DC side' }),
    acWh: acWh ?? lacking({ code: 'energy.noneAt', side: 'AC outlet' }),
    usableSharePercent: bare(ratios.usableSharePercent),
    outletSharePercent: bare(ratios.outletSharePercent),
    conversionEfficiencyPercent: bare(ratios.conversionEfficiencyPercent),
  };
}

interface Energies {
  /** What the maker rates the unit at; taken as exact, > 0. */
  readonly ratedWh: number;
  /** Drawn from the battery at its DC side until it shut off; null where not measured. */
  readonly directWh: Figure | null;
  /** Delivered at the AC outlet in the same run; null where not measured. */
  readonly alternatingWh: Figure | null;
}

/** Three ratios that are often taken for one another. */
interface EnergyRatios {
  /** DC energy over rating: what of the rated capacity can be used at all. */
  readonly usableSharePercent: Figure;
  /** AC energy over rating: what of the rated capacity reaches the outlet. Never an efficiency. */
  readonly outletSharePercent: Figure;
  /** AC energy over DC energy: what the inverter makes of it. */
  readonly conversionEfficiencyPercent: Figure;
}

/**
 * Usable share, outlet share and conversion efficiency of one discharge.
 *
 * outlet share = usable share · conversion efficiency
 *
 * @throws RangeError where the rating is not positive.
 */
export function energyRatios({ ratedWh, directWh, alternatingWh }: Energies): EnergyRatios {
  if (!(ratedWh > 0)) throw new RangeError(`a rated energy must be positive, not ${ratedWh} Wh`);
  const rating: Figure = { value: ratedWh, uncertainty: 0 };
  const direct: Figure = directWh ?? lacking({ code: 'energy.noneAt', side: 'DC side' });
  const outlet: Figure = alternatingWh ?? lacking({ code: 'energy.noneAt', side: 'AC outlet' });
  return {
    usableSharePercent: quotientPercent(direct, rating),
    outletSharePercent: quotientPercent(outlet, rating),
    conversionEfficiencyPercent: quotientPercent(outlet, direct),
  };
}
