import type { Assay } from '../../assay/assay.ts';
import type { Notice } from '../../base/notice.ts';
import type { BenchUnit } from '../../bench/benchDocument.ts';
import { benchUnit } from '../../bench/benchUnit.ts';
import { parseUnitClaim } from '../../bench/claims/parseUnitClaim.ts';
import { type Comparand, compareCaptures } from '../../bench/compare/compareCaptures.ts';
import { compareUnits } from '../../bench/compareUnits.ts';
import type { MeasuredUnit } from '../../bench/measuredUnit.ts';
import type {
  CarriedUnit,
  ComparisonEvidence,
  OneCapture,
  OverlayEvidence,
  SweepEvidence,
} from '../../draw/evidence.ts';
import { differenceWords } from '../../words/notices/rechecked.ts';
import { jsonText } from '../../words/text.ts';
import { worded } from '../../words/worded.ts';
import { figureFault, recheckCapture } from './recheckCapture.ts';
import { valueDifferences } from './valueDifferences.ts';

/**
 * Holds a sheet of several captures against them, measured again: every value of each of today's units whose
 * captures are all there, and the rows that compare the units.
 *
 * @param again - assays of captures of the sheet.
 * @returns what differs, each in a sentence; empty where nothing does. That a capture is missing is not said here.
 */
export function recheckBench(
  evidence: SweepEvidence | ComparisonEvidence,
  again: readonly Assay[],
): readonly Notice[] {
  const units = evidence.picture === 'sweep' ? [evidence.result] : evidence.result.units;
  const today = units.filter(({ earlier }) => earlier === undefined);
  const bySha256 = new Map(again.map((assay) => [assay.result.sha256, assay]));
  return [
    ...today.flatMap((unit) => unitFaults(unit, evidence.told, bySha256)),
    ...evidence.told.flatMap(({ name }) => (today.some((unit) => unit.name === name) ? [] : [untold(name)])),
    ...(evidence.picture === 'comparison' ? comparisonFaults(evidence) : []),
  ];
}

type Assays = ReadonlyMap<string, Assay>;

function unitFaults(unit: BenchUnit, all: readonly CarriedUnit[], assays: Assays): readonly Notice[] {
  const [told, second] = all.filter(({ name }) => name === unit.name);
  if (told === undefined || second !== undefined) return [untold(unit.name)];
  const captures = [...told.sweep, ...told.steps, ...told.transfers];
  if (captures.some(({ sha256 }) => !assays.has(sha256))) return [];
  const measured = benchUnit(measuredUnit(told, assays));
  return valueDifferences(withoutPlaces(unit), withoutPlaces(JSON.parse(jsonText(worded(measured))))).map(
    ({ path, ...values }) => figureFault({ path: `${told.name}.${path}`, ...values }),
  );
}

function untold(name: string): Notice {
  return differenceWords({ code: 'unit.untold', unit: name });
}

function measuredUnit(told: CarriedUnit, assays: Assays): MeasuredUnit {
  const assayOf = ({ file, sha256 }: { readonly file: string; readonly sha256: string }): Assay => {
    const assay = assays.get(sha256)!;
    return { ...assay, result: { ...assay.result, file } };
  };
  const { name, label, rule, energy, claims, sweep, steps, transfers } = told;
  return {
    ...{ name, label, rule, energy },
    claims: claims.map(parseUnitClaim),
    sweep: sweep.map((capture) => {
      const { result, budgets } = assayOf(capture);
      return { result, budgets, told: capture.told };
    }),
    steps: steps.map((capture) => ({ result: assayOf(capture).result, told: capture.told })),
    transfers: transfers.map((capture) => ({
      result: assayOf(capture).result,
      ...(capture.note === undefined ? {} : { note: capture.note }),
      ...(capture.direction === undefined ? {} : { direction: capture.direction }),
    })),
  };
}

/** Where the captures' own sheets were written is no result. */
function withoutPlaces(unit: BenchUnit | undefined): unknown {
  if (unit === undefined) return undefined;
  return { ...unit, points: unit.points.map(({ sheet: _, ...point }) => point) };
}

function comparisonFaults({ result }: ComparisonEvidence): readonly Notice[] {
  const { units, comparison } = result;
  return valueDifferences(comparison, JSON.parse(jsonText(worded(compareUnits(units))))).map(
    ({ path, ...values }) =>
      differenceWords({ code: 'figure.derived', path: `comparison.${path}`, ...values, from: 'units' }),
  );
}

/** Where a capture lies is no part of the result. */
const ignored = ['a.file', 'b.file'];

/** Both sides of an overlay against their captures, and the differences between the two measured again. */
export function recheckOverlay(
  { sides, result, basis }: OverlayEvidence,
  again: readonly (readonly Assay[])[],
): readonly Notice[] {
  const found = sides.map((side) => again.find(([first]) => first?.result.sha256 === side.result.sha256));
  const faults = sides.flatMap((side, i) => {
    const assays = found[i];
    return assays === undefined ? [] : recheckCapture(side, assays);
  });
  const [a, b] = sides.map((side, i) => comparandOf(side, found[i], basis));
  if (a === undefined || b === undefined) return faults;
  const compared = JSON.parse(
    jsonText(worded(compareCaptures(a, b, { sameInstrument: result.sameInstrument }))),
  );
  const differences = valueDifferences(result, compared, ignored);
  return [
    ...faults,
    ...differences.map((values) => differenceWords({ code: 'figure.derived', ...values, from: 'captures' })),
  ];
}

/** Undefined where the comparison took more than the sheet carries and the capture is not there. */
function comparandOf(
  { result }: OneCapture,
  assays: readonly Assay[] | undefined,
  basis: OverlayEvidence['basis'],
): Comparand | undefined {
  if (basis === 'results') return { result, budgets: null };
  const assay = assays?.[0];
  return assay === undefined ? undefined : { result, budgets: assay.budgets };
}
