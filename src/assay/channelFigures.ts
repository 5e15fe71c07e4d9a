import type { Figure, MeasuredFigure } from '../base/figure.ts';
import type { BudgetedFigure } from '../measure/doubt/budget.ts';
import type { WaveFigures } from '../measure/waveFigures.ts';
import type { NamedBudget } from './assay.ts';
import type { CurrentFigures, VoltageFigures } from './measureDocument.ts';

/** A voltage channel's figures under the keys of the result document. */
export function voltageFigures(channel: string, budgeted: WaveFigures): VoltageFigures {
  const figures = withoutBudgets(budgeted);
  return {
    channel,
    spanS: figures.spanS,
    cyclesUsed: figures.cyclesUsed,
    frequencyHz: figures.frequencyHz,
    rmsV: figures.rms,
    meanV: figures.mean,
    peakV: figures.peak,
    troughV: figures.trough,
    maxV: figures.max,
    minV: figures.min,
    ...ratios(figures),
    fundamentalV: figures.fundamental,
    edgeSlopeVPerUs: figures.edgeSlope,
    acRmsV: figures.acRms,
    averageRespondingV: figures.averageResponding,
    harmonics: figures.harmonics.map(({ order, rms, ...rest }) => ({ order, rmsV: rms, ...rest })),
  };
}

/** A current channel's figures under the keys of the result document. */
export function currentFigures(channel: string, budgeted: WaveFigures): CurrentFigures {
  const figures = withoutBudgets(budgeted);
  return {
    channel,
    spanS: figures.spanS,
    cyclesUsed: figures.cyclesUsed,
    frequencyHz: figures.frequencyHz,
    rmsA: figures.rms,
    meanA: figures.mean,
    peakA: figures.peak,
    troughA: figures.trough,
    maxA: figures.max,
    minA: figures.min,
    ...ratios(figures),
    fundamentalA: figures.fundamental,
    edgeSlopeAPerUs: figures.edgeSlope,
    harmonics: figures.harmonics.map(({ order, rms, ...rest }) => ({ order, rmsA: rms, ...rest })),
  };
}

function ratios(
  figures: WaveFigures,
): Pick<
  VoltageFigures,
  | 'crestFactor'
  | 'formFactor'
  | 'thdPercent'
  | 'thdOfRmsPercent'
  | 'thdOrders'
  | 'thdNoisePercent'
  | 'bandwidthHz'
  | 'deviationFactorPercent'
  | 'dwellPercent'
  | 'zeroCrossingsPerCycle'
> {
  const { crestFactor, formFactor, thdPercent, thdOfRmsPercent, thdOrders } = figures;
  const { thdNoisePercent, bandwidthHz, deviationFactorPercent, dwellPercent, zeroCrossingsPerCycle } =
    figures;
  return {
    crestFactor,
    formFactor,
    thdPercent,
    thdOfRmsPercent,
    thdOrders,
    thdNoisePercent,
    bandwidthHz,
    deviationFactorPercent,
    dwellPercent,
    zeroCrossingsPerCycle,
  };
}

/**
 * A document section whose keys that end in `rms` end in the channel's unit instead: `groupRms` is `groupRmsV`.
 *
 * @param section - plain data.
 * @returns the same data under the new keys, all the way down, as the type that the caller names.
 */
export function keyedByUnit<T>(section: object, unit: 'V' | 'A'): T {
  const renamed = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(renamed);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(
      Object.entries(value).map(([key, part]) => [/rms$/i.test(key) ? `${key}${unit}` : key, renamed(part)]),
    );
  };
  return renamed(section) as T;
}

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

/** The same figure without its budget, which a result document does not carry. */
export function withoutBudget(figure: MeasuredFigure | BudgetedFigure): MeasuredFigure;
export function withoutBudget(figure: Figure): Figure;
export function withoutBudget(figure: Figure | BudgetedFigure): Figure {
  if (!('budget' in figure)) return figure;
  const { budget: _, ...rest } = figure;
  return rest;
}

/** The same figures without their budgets. */
function withoutBudgets(figures: WaveFigures): WaveFigures {
  const bare = Object.entries(figures).map(([key, value]: [string, unknown]) => [
    key,
    typeof value === 'object' && value !== null && 'budget' in value
      ? withoutBudget(value as BudgetedFigure)
      : value,
  ]);
  return Object.fromEntries(bare) as WaveFigures;
}
