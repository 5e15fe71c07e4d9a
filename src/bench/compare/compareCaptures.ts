import type { NamedBudget } from '../../assay/assay.ts';
import type { Component } from '../../measure/doubt/component.ts';
import type { BenchNotice } from '../notices.ts';
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
): readonly BenchNotice[] {
  const notices: (BenchNotice | null)[] = [
    a.sha256 === b.sha256
      ? { code: 'compare.same', message: 'Both are the same capture: their SHA-256 are equal.' }
      : null,
    a.nominal?.voltageV !== b.nominal?.voltageV || a.nominal?.frequencyHz !== b.nominal?.frequencyHz
      ? { code: 'compare.nominal', message: 'They are not of the same nominal voltage and frequency.' }
      : null,
    loadNotice(a.load, b.load),
    ordersOf(a) !== ordersOf(b)
      ? {
          code: 'compare.orders',
          message: `Their THD counts harmonics to different orders, ${ordersOf(a)} and ${ordersOf(b)}: compare it with care, or set --orders.`,
        }
      : null,
    rateNotice(a.capture.sampleRateHz, b.capture.sampleRateHz),
    isUnbudgeted
      ? {
          code: 'compare.budgets',
          message:
            'One instrument was told, but sheets and results don’t carry what their uncertainties are made of: name the captures themselves. The differences are taken as of two instruments.',
        }
      : null,
  ];
  return notices.filter((notice) => notice !== null);
}

function loadNotice(a: string | undefined, b: string | undefined): BenchNotice | null {
  const code = 'compare.load';
  if (a === undefined || b === undefined) {
    return { code, message: 'The load of one or both is not told: a difference may be the load’s.' };
  }
  return a === b ? null : { code, message: `They were taken at different loads, ${a} and ${b}.` };
}

function rateNotice(a: number, b: number): BenchNotice | null {
  return Math.max(a, b) <= RATE_RATIO * Math.min(a, b)
    ? null
    : {
        code: 'compare.rate',
        message:
          'Their sample rates are more than a factor of two apart: noise, edges and THD plus noise are seen differently.',
      };
}

function ordersOf({ voltage, current }: ComparedResult): number | undefined {
  return (voltage ?? current)?.thdOrders;
}
