import { contribution } from '../../figures/uncertainty/component.ts';
import type { NamedBudget } from '../../verdict/assay.ts';
import { figureText } from '../numbers/figureText.ts';
import { significantText } from '../numbers/significantText.ts';
import { withUnit } from '../numbers/withUnit.ts';
import { alignColumns } from './alignColumns.ts';
import { terminalText } from './terminalText.ts';

/**
 * The uncertainty budgets in columns: for each figure its influences, the largest first, with type,
 * distribution, standard uncertainty, sensitivity and contribution.
 */
export function budgetLines(budgets: readonly NamedBudget[]): readonly string[] {
  const heading = ['', 'type', 'distribution', 'u', 'sensitivity', 'contributes'];
  return budgets.flatMap(({ figure, unit, value, uncertainty, budget }) => {
    const number = (x: number, of: string): string => withUnit(significantText(x, 2), of);
    const rows = budget.components.map((component) => [
      component.source,
      component.type,
      component.distribution,
      number(component.standardUncertainty, component.unit === 'U' ? unit : component.unit),
      significantText(component.sensitivity, 2),
      number(contribution(component), unit),
    ]);
    const degrees = budget.effectiveDegreesOfFreedom;
    const coverage = `k = ${budget.coverageFactor.toFixed(2)}, ${
      Number.isFinite(degrees)
        ? `${Math.floor(degrees)} effective degrees of freedom`
        : 'degrees of freedom: many'
    }`;
    return [
      '',
      `${figure}: ${figureText({ value, uncertainty }, unit)} (${coverage})`,
      ...alignColumns([heading, ...rows]).map((line) => `  ${line}`),
    ].map(terminalText);
  });
}
