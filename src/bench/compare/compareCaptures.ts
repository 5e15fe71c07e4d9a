import type { Component } from '../../figures/uncertainty/component.ts';
import type { MeasureResult } from '../../verdict/measureDocument.ts';
import type { Comparand } from './comparand.ts';
import type { CompareDocument, ComparedCapture, Difference, KindDifference } from './compareDocument.ts';
import { type ComparedFigure, comparedFigures } from './comparedFigures.ts';
import { comparedHarmonics } from './comparedHarmonics.ts';
import { comparisonNotices } from './comparisonNotices.ts';
import { differenceOf } from './differenceOf.ts';

export interface CompareOptions {
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
): CompareDocument {
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
function pairs(a: MeasureResult, b: MeasureResult): readonly (readonly [ComparedFigure, ComparedFigure])[] {
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
    budgets?.find(({ figure }) => figure === budget)?.budget.components;
  const [ofA, ofB] = [of(a), of(b)];
  return budget === null || ofA === undefined || ofB === undefined ? null : [ofA, ofB];
}

function captureOf({ file, sha256, label, load }: MeasureResult): ComparedCapture {
  return {
    ...{ file, sha256 },
    ...(label === undefined ? {} : { label }),
    ...(load === undefined ? {} : { load }),
  };
}

function kindDifference({ waveform: a }: MeasureResult, { waveform: b }: MeasureResult): KindDifference {
  const differs = a.kind !== b.kind;
  // The edge is that between a pure and a distorted sine: levels leave no doubt of that kind.
  const isAtEdge = (a.atTheEdge || b.atTheEdge) && a.levels === 0 && b.levels === 0;
  return { a: a.kind, b: b.kind, significant: differs && isAtEdge ? null : differs };
}

function claimDifferences(a: MeasureResult, b: MeasureResult): CompareDocument['claims'] {
  const ofB = new Map(b.claims.map(({ text, outcome }) => [text, outcome]));
  return a.claims.flatMap(({ text, outcome }) => {
    const other = ofB.get(text);
    return other === undefined ? [] : [{ text, a: outcome, b: other }];
  });
}
