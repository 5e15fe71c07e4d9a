import type { Budget } from '../../figures/uncertainty/budget.ts';
import type { Assay } from '../../verdict/assay.ts';

/** How the uncertainty of a capture's RMS voltage is made up; null where it has none. */
export function rmsBudget({ budgets }: Pick<Assay, 'budgets'>): Budget | null {
  return budgets.find(({ figure, unit }) => figure === 'RMS' && unit === 'V')?.budget ?? null;
}
