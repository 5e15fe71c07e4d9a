import type { WaveFigures } from '../../figures/waveFigures.ts';

/** The same figures without their budgets, which a result document does not carry. */
export function withoutBudgets(figures: WaveFigures): WaveFigures {
  const bare = Object.entries(figures).map(([key, figure]: [string, unknown]) => {
    if (typeof figure !== 'object' || figure === null || !('budget' in figure)) return [key, figure];
    const { budget: _, ...rest } = figure;
    return [key, rest];
  });
  return Object.fromEntries(bare) as WaveFigures;
}
