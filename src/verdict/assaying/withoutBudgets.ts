import type { Figure, MeasuredFigure } from '../../base/figure.ts';
import type { BudgetedFigure } from '../../figures/uncertainty/budget.ts';
import type { WaveFigures } from '../../figures/waveFigures.ts';

/** The same figure without its budget, which a result document does not carry. */
export function withoutBudget(figure: MeasuredFigure | BudgetedFigure): MeasuredFigure;
export function withoutBudget(figure: Figure): Figure;
export function withoutBudget(figure: Figure | BudgetedFigure): Figure {
  if (!('budget' in figure)) return figure;
  const { budget: _, ...rest } = figure;
  return rest;
}

/** The same figures without their budgets. */
export function withoutBudgets(figures: WaveFigures): WaveFigures {
  const bare = Object.entries(figures).map(([key, value]: [string, unknown]) => [
    key,
    typeof value === 'object' && value !== null && 'budget' in value
      ? withoutBudget(value as BudgetedFigure)
      : value,
  ]);
  return Object.fromEntries(bare) as WaveFigures;
}
