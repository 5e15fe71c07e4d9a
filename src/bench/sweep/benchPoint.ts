import type { Figure } from '../../base/figure.ts';
import type { Budget } from '../../figures/uncertainty/budget.ts';
import type { MeasureResult } from '../../verdict/measureDocument.ts';
import type { BenchPoint } from '../benchDocument.ts';
import { worstOutcome } from '../claims/worstOutcome.ts';
import { rmsScatter } from './rmsScatter.ts';
import type { ToldLoad } from './toldLoad.ts';

export interface PointInput {
  readonly result: MeasureResult;
  readonly told: ToldLoad;
  /** Of the RMS voltage; null where it is not known. */
  readonly budget: Budget | null;
  /** Null: not told. */
  readonly ratedW: number | null;
}

/** How far above its rating a load may be told or measured and still count as the rated load. */
const RATED_REACH = 1.05;

/** One capture of the sweep: its load and current, told or measured, beside what was measured of the voltage. */
export function benchPoint({ result, told, budget, ratedW }: PointInput): BenchPoint {
  const { voltage, waveform, claims } = result;
  const missing: Figure = { value: null, reason: 'the capture has no voltage channel' };
  const rmsV = voltage?.rmsV ?? missing;
  const load = loadOf(result, told);
  const overload = ratedW !== null && load.loadW.value !== null && load.loadW.value > RATED_REACH * ratedW;
  return {
    file: result.file,
    sha256: result.sha256,
    ...load,
    ...currentOf(result, told, rmsV),
    rmsV,
    rmsScatterV: budget === null ? null : rmsScatter(budget),
    frequencyHz: voltage?.frequencyHz ?? missing,
    thdPercent: voltage?.thdPercent ?? missing,
    crestFactor: voltage?.crestFactor ?? missing,
    kind: waveform.kind,
    atTheEdge: waveform.atTheEdge,
    overload,
    outcome: overload ? null : worstOutcome(claims.map(({ outcome }) => outcome)),
    ...(told.battery === undefined ? {} : { battery: told.battery }),
    ...(told.note === undefined ? {} : { note: told.note }),
  };
}

function loadOf({ power }: MeasureResult, { loadW }: ToldLoad): Pick<BenchPoint, 'loadW' | 'loadFrom'> {
  if (loadW !== null) return { loadW: { value: loadW, uncertainty: 0 }, loadFrom: 'told' };
  if (power !== undefined) return { loadW: power.activeW, loadFrom: 'measured' };
  const reason = 'the load was not told and the capture has no current channel';
  return { loadW: { value: null, reason }, loadFrom: 'unknown' };
}

function currentOf(
  { current, power }: MeasureResult,
  { loadW }: ToldLoad,
  rmsV: Figure,
): Pick<BenchPoint, 'currentA' | 'currentFrom'> {
  if (current !== undefined) return { currentA: current.rmsA, currentFrom: 'measured' };
  if (rmsV.value === null || rmsV.value === 0)
    return { currentA: { value: null, reason: 'no voltage was measured' }, currentFrom: 'unknown' };
  // A current that is nothing but noise has no figures of its own, but the power has been taken from it.
  if (power !== undefined && power.apparentVA.value !== null) {
    const { value, uncertainty } = power.apparentVA;
    const currentA = { value: value / rmsV.value, uncertainty: uncertainty / rmsV.value };
    return { currentA, currentFrom: 'measured' };
  }
  if (loadW === null)
    return { currentA: { value: null, reason: 'neither load nor current is known' }, currentFrom: 'unknown' };
  const currentA = loadW / rmsV.value;
  return {
    currentA: { value: currentA, uncertainty: (currentA * rmsV.uncertainty) / rmsV.value },
    currentFrom: 'told',
  };
}
