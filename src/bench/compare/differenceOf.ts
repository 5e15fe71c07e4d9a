import { hypot } from '../../base/elementary.ts';
import type { Figure, MeasuredFigure } from '../../base/figure.ts';
import type { Reason } from '../../base/notice.ts';
import { normalTail } from '../../judge/decide.ts';
import { type Budget, budgeted } from '../../measure/doubt/budget.ts';
import { type Component, isOfInstrument } from '../../measure/doubt/component.ts';
import { type BenchReason, lacking } from '../reasons.ts';
import type { Comparison, Difference } from './compareDocument.ts';

/**
 * Half-widths say nothing of the distributions behind them. Two normal ones that hold 95.45 % add up to √(a² + b²);
 * two equal rectangles, the worst case, to a triangle that takes 1.17 times as much: (1 − √0.0455) · √6 / (√3 ·
 * 0.9545 · √2) = 1.166.
 */
export const WIDEST_SUM = 1.17;

interface DifferenceOptions {
  /** What makes up the uncertainty of each; null where that is not known. */
  readonly components: readonly [a: readonly Component[], b: readonly Component[]] | null;
  readonly sameInstrument: boolean;
}

type JudgedDifference = Pick<Difference, 'difference' | 'significant' | 'reason'> & {
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

const NO_DOUBT: BenchReason = { code: 'difference.noDoubt' };

function judged(value: number, uncertainty: number): JudgedDifference {
  const difference = { value, uncertainty };
  return uncertainty === 0
    ? { difference, significant: null, reason: NO_DOUBT }
    : { difference, significant: Math.abs(value) > uncertainty };
}

function missing(a: Figure, b: Figure): JudgedDifference {
  const whyOf = (figure: Figure): Reason | null => (figure.value === null ? figure.reason : null);
  const why: BenchReason = { code: 'difference.missing', a: whyOf(a), b: whyOf(b) };
  return { difference: lacking(why), significant: null, reason: why };
}

/** A bound says "from nothing up to here" and no more: intervals are held against each other. */
function ofBounds(a: MeasuredFigure, b: MeasuredFigure): JudgedDifference {
  const [inA, inB] = [intervalOf(a), intervalOf(b)];
  const value = inB.middle - inA.middle;
  const uncertainty = inA.half + inB.half;
  const of = [
    ...(a.notAbove === undefined ? [] : (['A'] as const)),
    ...(b.notAbove === undefined ? [] : (['B'] as const)),
  ];
  const bound: BenchReason = { code: 'difference.bound', of };
  return {
    difference: { value, uncertainty },
    significant: Math.abs(value) > uncertainty,
    reason: bound,
  };
}

function intervalOf({ value, uncertainty, notAbove }: MeasuredFigure): { middle: number; half: number } {
  return notAbove === undefined
    ? { middle: value, half: uncertainty }
    : { middle: notAbove / 2, half: notAbove / 2 };
}

/**
 * What the difference b − a is uncertain by.
 *
 * Independent influences of both sides all count. One that is the same error in both counts once, with what it
 * does to b less what it does to a: u = |c_b·u_b − c_a·u_a|, so that a gain counts in proportion to the
 * difference, and an offset of the mean not at all.
 *
 * @param a - of one figure; likewise `b`, same unit.
 * @param sameInstrument - true: influences that an instrument does to every capture alike are one in both.
 * @returns components of the difference, in the figure's unit.
 * @see JCGM 100:2008, 5.2.2, equation (16), with correlation coefficients 0 and 1; F.1.2.3: an influence common
 * to both inputs is what correlates them.
 */
export function differenceComponents(
  a: readonly Component[],
  b: readonly Component[],
  sameInstrument: boolean,
): readonly Component[] {
  const side = (components: readonly Component[], sign: 1 | -1, name: 'A' | 'B'): readonly Component[] =>
    components.map((component) => {
      const isOne = sameInstrument && isOfInstrument(component);
      return {
        ...component,
        source: isOne ? component.source : `${component.source}, ${name}`,
        // In the figure's own unit: what is assumed of one instrument may differ between its two captures.
        standardUncertainty: 1,
        unit: '',
        sensitivity: sign * component.sensitivity * component.standardUncertainty,
      };
    });
  return [...side(b, 1, 'B'), ...side(a, -1, 'A')];
}

/** Two tails beyond two standard deviations: what a single comparison is wrong in. */
const SINGLE_RISK = 2 * normalTail(2);

/**
 * True where nothing tells two captures apart: neither the kind of wave nor any figure.
 *
 * One figure in twenty-two that did not change differs by more than its uncertainty, so that of a dozen some one
 * often does. All of them together are wrong as seldom as one alone where each has a share of its risk (Bonferroni),
 * which widens the uncertainties: 1.4 times for ten figures.
 */
export function isSame({ kind, differences }: Pick<Comparison, 'kind' | 'differences'>): boolean {
  const judged = differences.filter(({ significant }) => significant !== null);
  const factor = deviationsFor(SINGLE_RISK / Math.max(1, judged.length)) / 2;
  const isApart = judged.some(
    ({ difference }) =>
      difference.value !== null && Math.abs(difference.value) > factor * difference.uncertainty,
  );
  return kind.significant !== true && !isApart;
}

/** Standard deviations beyond which both tails together hold a risk, by halves. */
function deviationsFor(risk: number): number {
  let [low, high] = [0, 40];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (2 * normalTail(middle) > risk) low = middle;
    else high = middle;
  }
  return high;
}
