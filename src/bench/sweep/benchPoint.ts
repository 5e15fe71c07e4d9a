import type { Assay } from '../../assay/assay.ts';
import type { AssayResult } from '../../assay/measureDocument.ts';
import type { Figure } from '../../base/figure.ts';
import { type Budget, budgeted } from '../../measure/doubt/budget.ts';
import { isOfInstrument } from '../../measure/doubt/component.ts';
import type { BenchPoint } from '../benchDocument.ts';
import { worstOutcome } from '../claims/unitClaim.ts';
import { lacking } from '../reasons.ts';
import { isAbove, type ShownLoad } from '../shownLoad.ts';

interface PointInput {
  readonly result: AssayResult;
  readonly told: ToldLoad;
  /** What the capture shows of that load. */
  readonly shown: ShownLoad;
  /** Of the RMS voltage; null where it is not known. */
  readonly budget: Budget | null;
  /** Null: not told. */
  readonly ratedW: number | null;
}

/** One capture of the sweep: its load and current, measured or by words, beside what was measured of the voltage. */
export function benchPoint({ result, told, shown, budget, ratedW }: PointInput): BenchPoint {
  const { voltage, waveform, claims } = result;
  const figures = shown.isFigured ? voltage : undefined;
  const missing = lacking({ code: voltage === undefined ? 'capture.noVoltage' : 'load.notSteady' });
  const rmsV = figures?.rmsV ?? missing;
  const { file, sha256, loadW, loadFrom, loss } = shown;
  const overload = ratedW !== null && isAbove(loadW, ratedW);
  const judges = !overload && figures !== undefined;
  return {
    ...{ file, sha256, loadW, loadFrom },
    ...currentOf(result, shown, rmsV),
    rmsV,
    rmsScatterV: budget === null || figures === undefined ? null : rmsScatter(budget),
    frequencyHz: figures?.frequencyHz ?? missing,
    thdPercent: figures?.thdPercent ?? missing,
    crestFactor: figures?.crestFactor ?? missing,
    kind: waveform.kind,
    atTheEdge: waveform.atTheEdge,
    overload,
    ...(figures === undefined ? {} : reactiveLoad(result)),
    ...(loss === null ? {} : { lost: loss.words }),
    outcome: judges ? worstOutcome(claims.map(({ outcome }) => outcome)) : null,
    ...(told.battery === undefined ? {} : { battery: told.battery }),
    ...(told.note === undefined ? {} : { note: told.note }),
  };
}

/** A load that draws no current of the voltage's own shape and phase. */
function reactiveLoad({ loadKind }: AssayResult): Pick<BenchPoint, 'loadKind'> {
  const kind = loadKind?.kind;
  return kind === undefined || kind === 'resistive' || kind === 'not classified' ? {} : { loadKind: kind };
}

function currentOf(
  { current, power }: AssayResult,
  { loadW, loadFrom }: Pick<ShownLoad, 'loadW' | 'loadFrom'>,
  rmsV: Figure,
): Pick<BenchPoint, 'currentA' | 'currentFrom'> {
  if (current !== undefined) return { currentA: current.rmsA, currentFrom: 'measured' };
  if (rmsV.value === null || rmsV.value === 0)
    return { currentA: lacking({ code: 'voltage.none' }), currentFrom: 'unknown' };
  // A current that is nothing but noise has no figures of its own, but the power has been taken from it.
  if (power !== undefined && power.apparentVA.value !== null) {
    const { value, uncertainty } = power.apparentVA;
    const currentA = { value: value / rmsV.value, uncertainty: uncertainty / rmsV.value };
    return { currentA, currentFrom: 'measured' };
  }
  if (loadW.value === null || loadFrom === 'measured' || loadFrom === 'unknown')
    return { currentA: lacking({ code: 'load.noCurrent' }), currentFrom: 'unknown' };
  const currentA = loadW.value / rmsV.value;
  return {
    currentA: { value: currentA, uncertainty: (currentA * rmsV.uncertainty) / rmsV.value },
    currentFrom: loadFrom,
  };
}

/**
 * The part of a voltage's uncertainty that differs from capture to capture: noise, resolution, edges, method.
 *
 * @returns half-width that covers 95.45 %, in the figure's unit.
 * @remarks It presumes one scope, one probe and one vertical setting for all captures: a scope's gain differs
 * a little from setting to setting, which this leaves out.
 */
function rmsScatter({ components }: Budget): number {
  return budgeted(
    0,
    components.filter((component) => !isOfInstrument(component)),
  ).uncertainty;
}

/** How the uncertainty of a capture's RMS voltage is made up; null where it has none. */
export function rmsBudget({ budgets }: Pick<Assay, 'budgets'>): Budget | null {
  return budgets.find(({ key, unit }) => key === 'rms' && unit === 'V')?.budget ?? null;
}

/** What a person tells of a capture of the sweep. */
export interface ToldLoad {
  /** Null: not told. */
  readonly loadW: number | null;
  readonly battery?: NonNullable<BenchPoint['battery']>;
  readonly note?: string;
}
