import type { NamedBudget } from '../../assay/assay.ts';
import type { Component } from '../../measure/doubt/component.ts';
import type { CompareNotice } from '../notices.ts';
import type {
  ComparedCapture,
  ComparedResult,
  Comparison,
  Difference,
  KindDifference,
} from './compareDocument.ts';
import { type ComparedFigure, comparedFigures, comparedHarmonics } from './comparedFigures.ts';
import { differenceOf } from './differenceOf.ts';

interface CompareOptions {
  /**
   * Told: one scope and probe at one setting took both, so that what they are off by is the same in both. It takes
   * the budgets of both sides. Default false.
   */
  readonly sameInstrument?: boolean;
}

/** Two captures, figure by figure: what differs, by how much, and whether that is more than the uncertainty. */
export function compareCaptures(
  a: Comparand,
  b: Comparand,
  { sameInstrument = false }: CompareOptions = {},
): Comparison {
  const isBudgeted = a.budgets !== null && b.budgets !== null;
  const together = sameInstrument && isBudgeted;
  const compared = ([ofA, ofB]: readonly [ComparedFigure, ComparedFigure]): Difference => {
    const { key, quantity, unit } = ofA;
    const components = componentsOf(a, b, ofA);
    const { budget: _, ...judged } = differenceOf(ofA.figure, ofB.figure, {
      components,
      sameInstrument: together,
    });
    return { key, quantity, unit, a: ofA.figure, b: ofB.figure, ...judged };
  };
  return {
    schema: 'sineassay/compare@1',
    a: captureOf(a.result),
    b: captureOf(b.result),
    sameInstrument: together,
    kind: kindDifference(a.result, b.result),
    differences: [...pairs(a.result, b.result), ...comparedHarmonics(a.result, b.result)].map(compared),
    claims: claimDifferences(a.result, b.result),
    notices: comparisonNotices(a.result, b.result, sameInstrument && !isBudgeted),
  };
}

/** Figures that both have. */
function pairs(a: ComparedResult, b: ComparedResult): readonly (readonly [ComparedFigure, ComparedFigure])[] {
  const ofB = new Map(comparedFigures(b).map((figure) => [figure.key, figure]));
  return comparedFigures(a).flatMap((figure) => {
    const other = ofB.get(figure.key);
    // What neither has is no difference: a sine has no time at zero.
    if (other === undefined || (figure.figure.value === null && other.figure.value === null)) return [];
    return [[figure, other] as const];
  });
}

function componentsOf(
  a: Comparand,
  b: Comparand,
  { budget }: ComparedFigure,
): readonly [readonly Component[], readonly Component[]] | null {
  const of = ({ budgets }: Comparand): readonly Component[] | undefined =>
    budgets?.find(({ key }) => key === budget)?.budget.components;
  const [ofA, ofB] = [of(a), of(b)];
  return budget === null || ofA === undefined || ofB === undefined ? null : [ofA, ofB];
}

function captureOf({ file, sha256, label, load }: ComparedResult): ComparedCapture {
  return {
    ...{ file, sha256 },
    ...(label === undefined ? {} : { label }),
    ...(load === undefined ? {} : { load }),
  };
}

function kindDifference({ waveform: a }: ComparedResult, { waveform: b }: ComparedResult): KindDifference {
  const differs = a.kind !== b.kind;
  // The edge is that between a pure and a distorted sine: levels leave no doubt of that kind.
  const isAtEdge = (a.atTheEdge || b.atTheEdge) && a.levels === 0 && b.levels === 0;
  return { a: a.kind, b: b.kind, significant: differs && isAtEdge ? null : differs };
}

function claimDifferences(a: ComparedResult, b: ComparedResult): Comparison['claims'] {
  const ofB = new Map(b.claims.map(({ text, outcome }) => [text, outcome]));
  return a.claims.flatMap(({ text, outcome }) => {
    const other = ofB.get(text);
    return other === undefined ? [] : [{ text, a: outcome, b: other }];
  });
}

/** One side of a comparison: the result of one capture. */
export interface Comparand {
  readonly result: ComparedResult;
  /** How the main figures' uncertainties are made up; null where the result alone is at hand. */
  readonly budgets: readonly NamedBudget[] | null;
}

/** Rates apart by more than this see different parts of the noise and of the edges. */
const RATE_RATIO = 2;

/**
 * What makes two captures hard to compare.
 *
 * @param isUnbudgeted - one instrument was told, and what the uncertainties are made of is not at hand.
 */
function comparisonNotices(
  a: ComparedResult,
  b: ComparedResult,
  isUnbudgeted: boolean,
): readonly CompareNotice[] {
  const notices: (CompareNotice | null)[] = [
    a.sha256 === b.sha256 ? { code: 'compare.same' } : null,
    a.nominal?.voltageV !== b.nominal?.voltageV || a.nominal?.frequencyHz !== b.nominal?.frequencyHz
      ? { code: 'compare.nominal' }
      : null,
    loadNotice(a.load, b.load),
    ordersOf(a) !== ordersOf(b) ? { code: 'compare.orders', a: ordersOf(a), b: ordersOf(b) } : null,
    rateNotice(a.capture.sampleRateHz, b.capture.sampleRateHz),
    isUnbudgeted ? { code: 'compare.budgets' } : null,
  ];
  return notices.filter((notice) => notice !== null);
}

function loadNotice(a: string | undefined, b: string | undefined): CompareNotice | null {
  return a !== undefined && a === b ? null : { code: 'compare.load', a, b };
}

function rateNotice(a: number, b: number): CompareNotice | null {
  return Math.max(a, b) <= RATE_RATIO * Math.min(a, b) ? null : { code: 'compare.rate' };
}

function ordersOf({ voltage, current }: ComparedResult): number | undefined {
  return (voltage ?? current)?.thdOrders;
}
