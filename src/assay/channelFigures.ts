import type { Figure, MeasuredFigure } from '../base/figure.ts';
import type { BudgetedFigure } from '../measure/doubt/budget.ts';
import { type ChannelUnit, type EachChannelFigure, figuresIn } from '../measure/figures.ts';
import type { WaveFigures } from '../measure/waveFigures.ts';
import type { NamedBudget } from './assay.ts';
import type { CurrentFigures, VoltageFigures } from './measureDocument.ts';

/** A voltage channel's figures under the keys of the result document. */
export function voltageFigures(channel: string, figures: WaveFigures): VoltageFigures {
  return {
    ...channelSection(channel, figures, 'V'),
    harmonics: figures.harmonics.map(({ order, rms, ...rest }) => ({ order, rmsV: rms, ...rest })),
  };
}

/** A current channel's figures under the keys of the result document. */
export function currentFigures(channel: string, figures: WaveFigures): CurrentFigures {
  return {
    ...channelSection(channel, figures, 'A'),
    harmonics: figures.harmonics.map(({ order, rms, ...rest }) => ({ order, rmsA: rms, ...rest })),
  };
}

interface SpanAndOrders {
  readonly channel: string;
  readonly spanS: readonly [number, number];
  readonly cyclesUsed: number;
  readonly thdOrders: number;
}

function channelSection<U extends ChannelUnit>(
  channel: string,
  figures: WaveFigures,
  unit: U,
): SpanAndOrders & EachChannelFigure<Figure, U> {
  const { spanS, cyclesUsed, thdOrders } = figures;
  const own = figuresIn(unit).flatMap(({ figure, key }): [string, unknown][] => [
    [key, withoutBudget(figures[figure])],
    // In the document the order that the distortions count to has its place after them.
    ...(figure === 'thdOfRmsPercent' ? [['thdOrders', thdOrders] satisfies [string, number]] : []),
  ]);
  return { channel, spanS, cyclesUsed, ...Object.fromEntries(own) } as SpanAndOrders &
    EachChannelFigure<Figure, U>;
}

/** A figure of a channel's section by its key in the document; undefined where an earlier version had none. */
export function figureAt(section: VoltageFigures | CurrentFigures, key: string): Figure | undefined {
  return (section as unknown as Readonly<Record<string, Figure | undefined>>)[key];
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

/** How the uncertainty of each of the main figures is made up; a figure that is missing is left out. */
export function budgetsOf(figures: WaveFigures, channelUnit: ChannelUnit): readonly NamedBudget[] {
  return figuresIn(channelUnit, 'budget').flatMap(({ figure: key, name, unit }) => {
    const measured = figures[key] as Figure | BudgetedFigure;
    if (measured.value === null || !('budget' in measured)) return [];
    const { value, uncertainty, budget } = measured;
    return [{ key, figure: name, unit, value, uncertainty, budget }];
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
