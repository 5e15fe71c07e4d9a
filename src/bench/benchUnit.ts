import type { Notice } from '../base/notice.ts';
import type { Limit, Nominal } from '../verdict/measureDocument.ts';
import type { BenchPoint, BenchStep, BenchUnit } from './benchDocument.ts';
import { benchNotices } from './benchNotices.ts';
import { judgeUnitClaim } from './claims/judgeUnitClaim.ts';
import { outletClaims } from './claims/outletClaims.ts';
import { isRating, type UnitClaim } from './claims/unitClaim.ts';
import { energyRun } from './energy/energyRun.ts';
import { overloads } from './loads/overloads.ts';
import { shownLoad } from './loads/shownLoad.ts';
import type { MeasuredStep, MeasuredUnit } from './measuredUnit.ts';
import { benchPoint } from './sweep/benchPoint.ts';
import { clippingOnset } from './sweep/clippingOnset.ts';
import { droop } from './sweep/droop.ts';
import { rangeExit, voltageRange } from './sweep/rangeExit.ts';
import { regulation } from './sweep/regulation.ts';
import { rmsBudget } from './sweep/rmsBudget.ts';
import { byLoad } from './sweep/sweepEnds.ts';
import { benchTransfers, transferSides } from './transfers.ts';

/** Everything that the captures of one unit show together. */
export function benchUnit(unit: MeasuredUnit): BenchUnit {
  const { name, label, claims, rule } = unit;
  const ratedW = claims.find((claim) => isRating(claim) && claim.quantity === 'powerW');
  const rated = ratedW !== undefined && isRating(ratedW) ? ratedW.rating : null;
  const measured = unit.sweep.map(({ result, budgets, told, sheet }) => {
    const shown = shownLoad(result, told);
    const point = benchPoint({ result, told, shown, budget: rmsBudget({ budgets }), ratedW: rated });
    return { result, shown, point: sheet === undefined ? point : { ...point, sheet } };
  });
  const stepped = unit.steps.map(({ result, told }) =>
    shownLoad(result, { ...told, loadW: largestOf(told) }),
  );
  const loads = [...measured.map(({ shown }) => shown), ...stepped];
  const points = inOrder(measured.map(({ point }) => point));
  const nominal = nominalOf(unit);
  const range = voltageRange(claimedLimit(claims, 'rmsV'), nominal);
  const clipping = clippingOnset(points);
  const steps = unit.steps.flatMap(stepsOf);
  const energy = unit.energy.map(energyRun);
  const judged = [
    ...measured
      .filter(({ point, shown }) => !point.overload && shown.isFigured)
      .map(({ result, point }) => ({
        ...{ file: point.file, loadW: point.loadW.value, claims: result.claims },
      })),
    ...unit.transfers.map(({ result }) => ({ file: result.file, loadW: null, claims: result.claims })),
  ];
  const transfers = unit.transfers.flatMap(benchTransfers);
  const claimedTransfer = claimedLimit(claims, 'transferS');
  return {
    ...{ name, label, nominal, ratedW: rated, points },
    regulation: regulation(points),
    droop: droop(points, clipping.betweenW?.[1] ?? null),
    clipping,
    leavesRange: rangeExit(points, range),
    claims: claims.map((claim) => judgeUnitClaim(claim, { loads, transfers, energy, judged, range, rule })),
    ...{ steps, transfers, transferSides: transferSides(transfers, claimedTransfer, rule) },
    ...{ overloads: overloads(loads, rated), energy },
    notices: [...benchNotices({ points, ratedW: rated, unit, steps, transfers }), ...inventedNotice(unit)],
  };
}

/** Of both ends of a step the load that is on. */
function largestOf({ fromW, toW }: MeasuredStep['told']): number | null {
  return fromW === null ? toW : toW === null ? fromW : Math.max(fromW, toW);
}

/** Said once for all captures that say it of themselves. */
function inventedNotice({ sweep, steps, transfers }: MeasuredUnit): readonly Notice[] {
  const notices = [...sweep, ...steps, ...transfers].flatMap(({ result }) => result.notices);
  return notices.filter(({ code }) => code === 'data.invented').slice(0, 1);
}

/** By rising load; those of unknown load after them, as told. */
function inOrder(points: readonly BenchPoint[]): readonly BenchPoint[] {
  return [...byLoad(points).map(({ point }) => point), ...points.filter(({ loadW }) => loadW.value === null)];
}

/** The first that a capture found or was told, filled by what is claimed. */
function nominalOf({ sweep, steps, transfers, claims }: MeasuredUnit): Nominal | null {
  const results = [...sweep, ...steps, ...transfers].map(({ result }) => result);
  const found = results.find(({ nominal }) => nominal !== null)?.nominal ?? null;
  if (found !== null) return found;
  const { voltageV, frequencyHz } = outletClaims(claims).nominal;
  return voltageV === undefined || frequencyHz === undefined
    ? null
    : { voltageV, frequencyHz, inferred: false };
}

function claimedLimit(claims: readonly UnitClaim[], quantity: 'rmsV' | 'transferS'): Limit | null {
  for (const claim of claims) if (claim.quantity === quantity && claim.limit !== null) return claim.limit;
  return null;
}

function stepsOf({ result, told }: MeasuredStep): BenchStep[] {
  return result.steps.map(
    ({ atS, direction, beforeV, afterV, extremeV, deviationPercent, afterPercent, recoveryS }) => ({
      file: result.file,
      ...told,
      ...{ atS, direction, beforeV, afterV, extremeV, deviationPercent, afterPercent, recoveryS },
    }),
  );
}
