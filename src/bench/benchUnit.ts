import type { AssayNotice } from '../assay/notices.ts';
import { REACHED_SHARE } from '../judge/claims/ratings.ts';
import type { Limit } from '../judge/decide.ts';
import { apartRatio, type Nominal } from '../judge/nominal/mainsNominals.ts';
import { median } from '../signal/statistics.ts';
import type { BenchOverload, BenchPoint, BenchStep, BenchTransfer, UnitResult } from './benchDocument.ts';
import { judgeUnitClaim } from './claims/judgeUnitClaim.ts';
import { outletClaims } from './claims/parseUnitClaim.ts';
import { isRating, type UnitClaim } from './claims/unitClaim.ts';
import { energyRun } from './energyRun.ts';
import type { MeasuredStep, MeasuredUnit } from './measuredUnit.ts';
import type { BenchNotice } from './notices.ts';
import { isAbove, type ShownLoad, shownLoad } from './shownLoad.ts';
import { benchPoint, rmsBudget } from './sweep/benchPoint.ts';
import { clippingOnset, rangeExit, voltageRange } from './sweep/clippingOnset.ts';
import { droop } from './sweep/droop.ts';
import { byLoad, regulation } from './sweep/regulation.ts';
import { benchTransfers, transferSides } from './transfers.ts';

/** Everything that the captures of one unit show together. */
export function benchUnit(unit: MeasuredUnit): UnitResult {
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
function inventedNotice({ sweep, steps, transfers }: MeasuredUnit): readonly BenchNotice[] {
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

/** What to doubt of a unit's bench test as a whole; the doubts of single captures stay with their results. */
function benchNotices(test: {
  readonly points: readonly BenchPoint[];
  readonly ratedW: number | null;
  readonly unit: Pick<MeasuredUnit, 'sweep' | 'steps' | 'transfers'>;
  readonly steps: readonly BenchStep[];
  readonly transfers: readonly BenchTransfer[];
}): readonly BenchNotice[] {
  const { points, ratedW, unit, steps, transfers } = test;
  const notices: BenchNotice[] = [...captureDoubts(unit, points[0]?.file ?? null)];
  for (const { file, rmsV } of farFromOthers(points)) {
    notices.push({ code: 'bench.scaleDiffers', file, rmsV });
  }
  const unknown = points.filter(({ loadW }) => loadW.value === null).length;
  if (unknown > 0) notices.push({ code: 'bench.loadUnknown', captures: unknown });
  const highest = byLoad(points).at(-1)?.loadW;
  if (ratedW !== null && highest !== undefined && highest < REACHED_SHARE * ratedW) {
    notices.push({ code: 'bench.belowRating', highestW: highest, ratedW });
  }
  const by = (['told', 'file name'] as const).filter((from) =>
    points.some(({ loadFrom }) => loadFrom === from),
  );
  if (by.length > 0 && points.length > 1) {
    const isMeasured = points.some(({ loadFrom }) => loadFrom === 'measured');
    notices.push({ code: 'bench.loadTold', by, isMeasured });
  }
  for (const { file, loadKind } of points) {
    if (loadKind !== undefined) notices.push({ code: 'bench.loadKind', file, kind: loadKind });
  }
  const missing = (
    files: readonly { readonly result: { readonly file: string } }[],
    found: readonly { readonly file: string }[],
  ) =>
    files
      .filter(({ result }) => !found.some(({ file }) => file === result.file))
      .map(({ result }) => result.file);
  for (const file of missing(unit.steps, steps)) {
    notices.push({ code: 'bench.noStep', file });
  }
  for (const file of missing(unit.transfers, transfers)) {
    notices.push({ code: 'bench.noTransfer', file });
  }
  return notices;
}

/** Doubts of single captures that put the whole test in doubt. */
const CARRIED: ReadonlySet<AssayNotice['code']> = new Set([
  ...(['scale.half', 'scale.implied', 'scale.suspect', 'load.differs'] as const),
  ...(['nominal.off', 'nominal.other', 'dc.large', 'wave.overRange'] as const),
]);

/**
 * What a capture alone doubts of its scale and its load, once for captures that doubt the same.
 *
 * @param lightest - the capture that a unit's nominal is taken from: another outlet that a loaded one may be meant for is
 * none, as its voltage has sagged. Null: there is no sweep.
 */
function captureDoubts(
  { sweep, steps, transfers }: Pick<MeasuredUnit, 'sweep' | 'steps' | 'transfers'>,
  lightest: string | null,
): readonly BenchNotice[] {
  const found = [...sweep, ...steps, ...transfers].flatMap(({ result }) =>
    result.notices
      .filter(({ code }) => CARRIED.has(code))
      .filter(({ code }) => code !== 'nominal.other' || lightest === null || result.file === lightest)
      .map((notice) => ({ ...notice, file: result.file })),
  );
  return [...new Set(found.map(({ code }) => code))].map((code) => {
    const [first, ...others] = found.filter((notice) => notice.code === code);
    const more = [...new Set(others.map(({ file }) => file))];
    const { file, ...notice } = first!;
    return { ...notice, of: [file, ...(notice.of ?? [])], alsoOf: more };
  });
}

/** Captures whose voltage is less than half or more than twice that of the middle one. */
function farFromOthers(
  points: readonly BenchPoint[],
): readonly { readonly file: string; readonly rmsV: number }[] {
  const measured = points.flatMap(({ file, rmsV }) =>
    rmsV.value === null ? [] : [{ file, rmsV: rmsV.value }],
  );
  if (measured.length < 2) return [];
  const middle = median(Float64Array.from(measured, ({ rmsV }) => rmsV));
  return measured.filter(({ rmsV }) => apartRatio(rmsV, middle) > 2);
}

/**
 * The loads that went too far: above the rating, or under which the output was lost; by rising load, those of
 * unknown load last.
 *
 * @param ratedW - null: not told, and no load is called above it.
 */
function overloads(loads: readonly ShownLoad[], ratedW: number | null): readonly BenchOverload[] {
  const size = ({ loadW }: ShownLoad): number => loadW.value ?? Number.MAX_VALUE;
  return loads
    .map((load) => ({ load, aboveRating: ratedW === null ? null : isAbove(load.loadW, ratedW) }))
    .filter(({ load, aboveRating }) => aboveRating === true || load.loss !== null)
    .sort((a, b) => size(a.load) - size(b.load))
    .map(({ load: { loss, loadFrom, rmsV, ...rest }, aboveRating }) => ({
      ...rest,
      ...(loadFrom === 'unknown' ? {} : { loadFrom }),
      aboveRating,
      lost: loss !== null,
      seen: loss?.words ?? 'held to the end of the record',
      rmsV,
    }));
}
