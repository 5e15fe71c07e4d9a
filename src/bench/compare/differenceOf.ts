import { hypot } from '../../base/elementary/hypot.ts';
import type { Figure, MeasuredFigure } from '../../base/figure.ts';
import { type Budget, budgeted } from '../../figures/uncertainty/budget.ts';
import type { Component } from '../../figures/uncertainty/component.ts';
import type { Difference } from './compareDocument.ts';
import { differenceComponents } from './differenceComponents.ts';

/**
 * Half-widths say nothing of the distributions behind them. Two normal ones that hold 95.45 % add up to √(a² + b²);
 * two equal rectangles, the worst case, to a triangle that takes 1.17 times as much: (1 − √0.0455) · √6 / (√3 ·
 * 0.9545 · √2) = 1.166.
 */
export const WIDEST_SUM = 1.17;

export interface DifferenceOptions {
  /** What makes up the uncertainty of each; null where that is not known. */
  readonly components: readonly [a: readonly Component[], b: readonly Component[]] | null;
  readonly sameInstrument: boolean;
}

export type JudgedDifference = Pick<Difference, 'difference' | 'significant' | 'reason'> & {
  /** Absent where it is not known how the uncertainty is made up. */
  readonly budget?: Budget;
};

/**
 * The difference b − a with its expanded uncertainty, and whether it is larger than that.
 *
 * @returns `significant` null where a figure is missing or nothing is known of its uncertainty.
 * @remarks One comparison in twenty of a figure that did not change is called larger, as 95.45 % implies.
 * Without components nothing is taken as common, so that the uncertainty is rather too large.
 */
export function differenceOf(a: Figure, b: Figure, options: DifferenceOptions): JudgedDifference {
  if (a.value === null || b.value === null) return missing(a, b);
  if (a.notAbove !== undefined || b.notAbove !== undefined) return ofBounds(a, b);
  const { components, sameInstrument } = options;
  const value = b.value - a.value;
  if (components === null) {
    const uncertainty = WIDEST_SUM * hypot(a.uncertainty, b.uncertainty);
    return judged(value, uncertainty);
  }
  const { uncertainty, budget } = budgeted(value, differenceComponents(...components, sameInstrument));
  return { ...judged(value, uncertainty), budget };
}

function judged(value: number, uncertainty: number): JudgedDifference {
  const difference = { value, uncertainty };
  return uncertainty === 0
    ? { difference, significant: null, reason: 'nothing is known of its uncertainty' }
    : { difference, significant: Math.abs(value) > uncertainty };
}

function missing(a: Figure, b: Figure): JudgedDifference {
  const why = [
    ...(a.value === null ? [`A: ${a.reason}`] : []),
    ...(b.value === null ? [`B: ${b.reason}`] : []),
  ].join('; ');
  return { difference: { value: null, reason: why }, significant: null, reason: why };
}

/** A bound says "from nothing up to here" and no more: intervals are held against each other. */
function ofBounds(a: MeasuredFigure, b: MeasuredFigure): JudgedDifference {
  const [inA, inB] = [intervalOf(a), intervalOf(b)];
  const value = inB.middle - inA.middle;
  const uncertainty = inA.half + inB.half;
  const names = [...(a.notAbove === undefined ? [] : ['A']), ...(b.notAbove === undefined ? [] : ['B'])].join(
    ' and ',
  );
  return {
    difference: { value, uncertainty },
    significant: Math.abs(value) > uncertainty,
    reason: `${names}: known only as a bound`,
  };
}

function intervalOf({ value, uncertainty, notAbove }: MeasuredFigure): { middle: number; half: number } {
  return notAbove === undefined
    ? { middle: value, half: uncertainty }
    : { middle: notAbove / 2, half: notAbove / 2 };
}
