import type { Figure } from '../../base/figure.ts';
import type { BudgetedFigure } from '../../figures/uncertainty/budget.ts';
import type { WaveFigures } from '../../figures/waveFigures.ts';
import type { NamedBudget } from '../assay.ts';

/** The figures that a person asks about, in the order of a report. `U` stands for the channel's unit. */
const ASKED: readonly [key: keyof WaveFigures, figure: string, unit: string][] = [
  ['rms', 'RMS', 'U'],
  ['frequencyHz', 'frequency', 'Hz'],
  ['crestFactor', 'crest factor', ''],
  ['thdPercent', 'THD', '%'],
  ['thdNoisePercent', 'THD plus noise', '%'],
  ['mean', 'mean (DC)', 'U'],
  ['fundamental', 'fundamental', 'U'],
  ['peak', 'peak', 'U'],
  ['trough', 'trough', 'U'],
  ['formFactor', 'form factor', ''],
  ['deviationFactorPercent', 'deviation factor', '%'],
  ['averageResponding', 'average-responding meter', 'U'],
];

/** How the uncertainty of each of the main figures is made up; a figure that is missing is left out. */
export function budgetsOf(figures: WaveFigures, unit: 'V' | 'A'): readonly NamedBudget[] {
  return ASKED.flatMap(([key, figure, of]) => {
    const measured = figures[key] as Figure | BudgetedFigure;
    if (measured.value === null || !('budget' in measured)) return [];
    const { value, uncertainty, budget } = measured;
    return [{ figure, unit: of === 'U' ? unit : of, value, uncertainty, budget }];
  });
}
