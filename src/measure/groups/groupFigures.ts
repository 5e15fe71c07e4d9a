import { hypot } from '../../base/elementary.ts';
import type { MeasuredFigure } from '../../base/figure.ts';
import { budgeted } from '../doubt/budget.ts';
import { type Component, contribution, within } from '../doubt/component.ts';
import type { MeasureNotice } from '../notices.ts';

/** Orders and distortion of one window, or of several aggregated. */
export interface GroupValues {
  /** Orders 1 to the highest that the sample rate lets measure, 50 at most. */
  readonly orders: readonly OrderGroups[];
  /** To order 40 and to order 50, as far as `orders` goes; to its highest where that is below 40. */
  readonly distortion: readonly GroupDistortion[];
  /** Orders 14 to 40; null where `orders` ends below. */
  readonly partialWeightedRatio: number | null;
}

/** Harmonics by the group method of IEC 61000-4-7. RMS values in U. */
export interface GroupFigures {
  readonly cyclesPerWindow: 10 | 12;
  /** Ten or twelve measured cycles. */
  readonly windowS: number;
  /** Of the spectrum: the fundamental over the cycles of a window. */
  readonly lineSpacingHz: number;
  /** Each window, in order; at least one. */
  readonly windows: readonly GroupValues[];
  /** Over all windows: root of the mean of squares, factors made of the aggregated lines. */
  readonly all: GroupValues;
  /** Over each whole 15 windows (150 or 180 cycles); empty where the record holds fewer. */
  readonly threeSeconds: readonly GroupValues[];
  /** The highest that each value reaches behind the smoothing of 1.5 s; null below 15 windows. */
  readonly smoothedHighest: readonly OrderGroups[] | null;
  /** Which windows and aggregates the record allowed, one sentence. */
  readonly extent: string;
  readonly notices: readonly MeasureNotice[];
}

/** What stands at one order and between it and the next: RMS values in U. */
export interface OrderGroups {
  readonly order: number;
  /** The order's line alone. */
  readonly rms: number;
  /** All lines nearer to this order than to another; those half-way count half. */
  readonly groupRms: number;
  /** The order's line and one on each side. */
  readonly subgroupRms: number;
  /** All lines between this order and the next. */
  readonly interharmonicGroupRms: number;
  /** The same without the lines next to either order. */
  readonly interharmonicSubgroupRms: number;
}

/**
 * Harmonic groups and subgroups, interharmonic groups and centred subgroups of one window.
 *
 * group² = ½·Y²[Nh − N/2] + Σ Y²[Nh + k], |k| < N/2, + ½·Y²[Nh + N/2]; subgroup² = Σ Y²[Nh + k], |k| ≤ 1;
 * interharmonic group² = Σ Y²[Nh + k], 1 ≤ k ≤ N − 1; centred subgroup² the same with 2 ≤ k ≤ N − 2
 *
 * @param squares - squared RMS Y² of line k, in U²; at least N·(highest + 1) lines.
 * @param cycles - N, 10 or 12.
 * @param highest - order.
 * @returns orders 1 to `highest`.
 * @see IEC 61000-4-7:2002+A1:2008, 3.2 and 5.5, and its annex A (from memory).
 */
export function orderGroups(squares: Float64Array, cycles: number, highest: number): readonly OrderGroups[] {
  if (squares.length < cycles * (highest + 1)) {
    throw new RangeError(`${squares.length} lines don't reach past order ${highest}`);
  }
  const half = cycles / 2;
  return Array.from({ length: highest }, (_, i) => {
    const order = i + 1;
    const at = cycles * order;
    const sum = (from: number, to: number): number => {
      let total = 0;
      for (let k = at + from; k <= at + to; k++) total += squares[k]!;
      return total;
    };
    const halfWay = (squares[at - half]! + squares[at + half]!) / 2;
    return {
      order,
      rms: Math.sqrt(squares[at]!),
      groupRms: Math.sqrt(halfWay + sum(1 - half, half - 1)),
      subgroupRms: Math.sqrt(sum(-1, 1)),
      interharmonicGroupRms: Math.sqrt(sum(1, cycles - 1)),
      interharmonicSubgroupRms: Math.sqrt(sum(2, cycles - 2)),
    };
  });
}

/** Distortion factors of the group method, each over the fundamental's own line, group or subgroup. */
interface GroupDistortion {
  /** Of orders 2 to this. */
  readonly highestOrder: number;
  /** THD: single lines. */
  readonly thdRatio: number;
  /** THDG: groups. */
  readonly thdGroupsRatio: number;
  /** THDS: subgroups. */
  readonly thdSubgroupsRatio: number;
}

/**
 * √Σ (Yh / Y1)², h = 2 … H, of single lines, groups and subgroups.
 *
 * @param orders - from order 1 without a hole, at least H.
 * @see IEC 61000-4-7:2002+A1:2008, 3.3 (from memory).
 */
export function groupDistortion(orders: readonly OrderGroups[], highestOrder: number): GroupDistortion {
  const factor = (of: (order: OrderGroups) => number): number => {
    let sum = 0;
    for (let i = 1; i < highestOrder; i++) sum += of(orders[i]!) ** 2;
    return Math.sqrt(sum) / of(orders[0]!);
  };
  return {
    highestOrder,
    thdRatio: factor(({ rms }) => rms),
    thdGroupsRatio: factor(({ groupRms }) => groupRms),
    thdSubgroupsRatio: factor(({ subgroupRms }) => subgroupRms),
  };
}

/**
 * Partial weighted harmonic distortion, √Σ h·(Yh / Y1)², h = 14 … 40, of single lines.
 *
 * @returns ratio, ≥ 0; null where the orders end below 40.
 * @see IEC 61000-4-7:2002+A1:2008, 3.3.4; the orders are those of IEC 61000-3-12 (from memory).
 */
export function partialWeightedDistortion(orders: readonly OrderGroups[]): number | null {
  if (orders.length < 40) return null;
  let sum = 0;
  for (let order = 14; order <= 40; order++) sum += order * (orders[order - 1]!.rms / orders[0]!.rms) ** 2;
  return Math.sqrt(sum);
}

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
