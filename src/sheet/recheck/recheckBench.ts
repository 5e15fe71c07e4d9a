import type { Notice } from '../../base/notice.ts';
import type { BenchUnit } from '../../bench/benchDocument.ts';
import { benchUnit } from '../../bench/benchUnit.ts';
import { parseUnitClaim } from '../../bench/claims/parseUnitClaim.ts';
import { compareUnits } from '../../bench/compareUnits.ts';
import type { MeasuredUnit } from '../../bench/measuredUnit.ts';
import type { Assay } from '../../verdict/assay.ts';
import type { CarriedUnit, ComparisonEvidence, SweepEvidence } from '../evidence/evidence.ts';
import { jsonText } from '../jsonText.ts';
import { figureFault } from './recheckCapture.ts';
import { shown } from './shown.ts';
import { valueDifferences } from './valueDifferences.ts';

/**
 * Holds a sheet of several captures against them, measured again: every value of each unit whose captures are all
 * there, and the rows that compare the units.
 *
 * @param again - assays of captures of the sheet.
 * @returns what differs, each in a sentence; empty where nothing does.
 */
export function recheckBench(
  evidence: SweepEvidence | ComparisonEvidence,
  again: readonly Assay[],
): readonly Notice[] {
  const units = evidence.picture === 'sweep' ? [evidence.result] : evidence.result.units;
  const bySha256 = new Map(again.map((assay) => [assay.result.sha256, assay]));
  return [
    ...evidence.told.flatMap((told) => unitFaults(told, units, bySha256)),
    ...(evidence.picture === 'comparison' ? comparisonFaults(evidence) : []),
  ];
}

type Assays = ReadonlyMap<string, Assay>;

function unitFaults(told: CarriedUnit, units: readonly BenchUnit[], assays: Assays): readonly Notice[] {
  const captures = [...told.sweep, ...told.steps, ...told.transfers];
  const missing = captures.filter(({ sha256 }) => !assays.has(sha256));
  // None at all: the sheet is checked against itself, or another unit's captures were given.
  if (missing.length === captures.length) return [];
  if (missing.length > 0) {
    const names = missing.map(({ file }) => file).join(', ');
    const message = `${told.name}: not all of its captures are there to measure it again; missing: ${names}.`;
    return [{ code: 'capture.missing', message }];
  }
  const carried = units.find(({ name, earlier }) => name === told.name && earlier === undefined);
  const measured = benchUnit(measuredUnit(told, assays));
  return valueDifferences(withoutPlaces(carried), withoutPlaces(JSON.parse(jsonText(measured)))).map(
    ({ path, ...values }) => figureFault({ path: `${told.name}.${path}`, ...values }),
  );
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
  return valueDifferences(comparison, JSON.parse(jsonText(compareUnits(units)))).map(
    ({ path, before, after }) => ({
      code: 'figure.derived',
      message: `comparison.${path}: the sheet carries ${shown(before)}, its units give ${shown(after)}.`,
    }),
  );
}
