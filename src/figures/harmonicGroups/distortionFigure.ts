import { hypot } from '../../base/elementary/hypot.ts';
import type { MeasuredFigure } from '../../base/figure.ts';
import { budgeted } from '../uncertainty/budget.ts';
import { type Component, contribution, within } from '../uncertainty/component.ts';
import type { GroupDistortion } from './groupDistortion.ts';
import type { GroupFigures } from './groupFigures.ts';

/** Lines that an order's share is made of, in windows of N cycles. */
const KINDS: Readonly<
  Record<'thdRatio' | 'thdGroupsRatio' | 'thdSubgroupsRatio', (cycles: number) => number>
> = {
  thdRatio: () => 1,
  thdGroupsRatio: (cycles) => cycles,
  thdSubgroupsRatio: () => 3,
};

export interface DistortionOptions {
  /** Which of the factors. */
  readonly kind: keyof typeof KINDS;
  /** One of those in `all.distortion`. */
  readonly highestOrder: number;
  /** Standard deviation of the record's noise, in U. */
  readonly noise: number;
  /** Between samples. */
  readonly intervalS: number;
  /** The scope's own distortion, in % of the fundamental. */
  readonly distortion: Component;
}

/**
 * A distortion factor of the group method as a figure, in percent, with its uncertainty; null where the orders
 * asked for were not reached.
 *
 * @remarks Noise of σ adds 2σ²/L to the square of each line (L samples a window), always upwards: the figure keeps
 * it and counts what it may have added as doubt. Windows that differ add their mean's deviation. At the floor of
 * noise and scope the figure gains the bound `notAbove`.
 */
export function distortionFigure(figures: GroupFigures, options: DistortionOptions): MeasuredFigure | null {
  const { kind, highestOrder, noise, intervalS, distortion } = options;
  const of = (all: readonly GroupDistortion[]): number | undefined =>
    all.find((factors) => factors.highestOrder === highestOrder)?.[kind];
  const ratio = of(figures.all.distortion);
  if (ratio === undefined) return null;
  const percent = 100 * ratio;
  const lines = (highestOrder - 1) * KINDS[kind](figures.cyclesPerWindow);
  const samples = figures.windowS / intervalS;
  const noisePercent = (100 * noise * Math.sqrt((2 * lines) / samples)) / figures.all.orders[0]!.rms;
  const added = percent - Math.sqrt(Math.max(0, percent ** 2 - noisePercent ** 2));
  const figure = budgeted(percent, [
    distortion,
    within('noise in the lines', added, '%', 1),
    ...betweenWindows(figures.windows.map(({ distortion: factors }) => 100 * (of(factors) ?? ratio))),
  ]);
  const floor = hypot(noisePercent, contribution(distortion));
  return percent >= 1.5 * floor ? figure : { ...figure, notAbove: percent + figure.uncertainty };
}

/** Type A: the deviation of the mean of n windows, of n − 1 degrees of freedom; nothing from one window. */
function betweenWindows(percents: readonly number[]): readonly Component[] {
  const count = percents.length;
  if (count < 2) return [];
  const mean = percents.reduce((sum, x) => sum + x / count, 0);
  const squares = percents.reduce((sum, x) => sum + (x - mean) ** 2, 0);
  return [
    {
      source: 'scatter between windows',
      type: 'A',
      distribution: 'student',
      standardUncertainty: Math.sqrt(squares / (count - 1) / count),
      unit: '%',
      sensitivity: 1,
      degreesOfFreedom: count - 1,
    },
  ];
}
