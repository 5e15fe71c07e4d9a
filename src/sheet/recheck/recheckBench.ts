import type { Notice } from '../../base/notice.ts';
import type { BenchPoint, BenchUnit } from '../../bench/benchDocument.ts';
import { benchPoint } from '../../bench/sweep/benchPoint.ts';
import { clippingOnset } from '../../bench/sweep/clippingOnset.ts';
import { droop } from '../../bench/sweep/droop.ts';
import { rangeExit } from '../../bench/sweep/rangeExit.ts';
import { regulation } from '../../bench/sweep/regulation.ts';
import { rmsBudget } from '../../bench/sweep/rmsBudget.ts';
import type { Assay } from '../../verdict/assay.ts';
import type { ComparisonEvidence, SweepEvidence } from '../evidence/evidence.ts';
import { jsonText } from '../jsonText.ts';
import { figureFault } from './recheckCapture.ts';
import { valueDifferences } from './valueDifferences.ts';

/** Where captures and their sheets lie is no part of the result. */
const ignored = ['file', 'sheet'];

/**
 * Holds a sheet of several captures against those that are given, measured again, and what it derives from its
 * points (regulation, droop, the loads at which something sets in) against those points.
 *
 * @param again - assays of captures of the sheet; those that are not given are not checked.
 * @returns what differs, each in a sentence; empty where nothing does.
 */
export function recheckBench(
  evidence: SweepEvidence | ComparisonEvidence,
  again: readonly Assay[],
): readonly Notice[] {
  const units = evidence.picture === 'sweep' ? [evidence.result] : evidence.result.units;
  const bySha256 = new Map(again.map((assay) => [assay.result.sha256, assay]));
  return units.flatMap((unit) => [
    ...derivedFaults(unit),
    ...unit.points.flatMap((point) => pointFaults(unit, point, bySha256.get(point.sha256))),
  ]);
}

function derivedFaults(unit: BenchUnit): readonly Notice[] {
  const { points, leavesRange } = unit;
  const clipping = clippingOnset(points);
  const derived = {
    regulation: regulation(points),
    droop: droop(points, clipping.betweenW?.[1] ?? null),
    clipping,
    leavesRange: rangeExit(points, leavesRange.range),
  };
  const { regulation: carriedRegulation, droop: carriedDroop, clipping: carriedClipping } = unit;
  const carried = {
    regulation: carriedRegulation,
    droop: carriedDroop,
    clipping: carriedClipping,
    leavesRange,
  };
  return valueDifferences(carried, JSON.parse(jsonText(derived))).map(({ path, before, after }) => {
    const { message } = figureFault({ path: `${unit.name}.${path}`, before, after });
    return { code: 'figure.derived', message: message.replace('the capture gives', 'its points give') };
  });
}

function pointFaults(unit: BenchUnit, point: BenchPoint, assay: Assay | undefined): readonly Notice[] {
  if (assay === undefined) return [];
  const { battery, note, loadW, loadFrom } = point;
  const again = benchPoint({
    result: assay.result,
    told: {
      loadW: loadFrom === 'told' ? loadW.value : null,
      ...(battery === undefined ? {} : { battery }),
      ...(note === undefined ? {} : { note }),
    },
    budget: rmsBudget(assay),
    ratedW: unit.ratedW,
  });
  return valueDifferences(point, JSON.parse(jsonText(again)), ignored).map(({ path, ...values }) =>
    figureFault({ path: `${unit.name}, ${point.file}: ${path}`, ...values }),
  );
}
