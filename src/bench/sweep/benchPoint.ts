import type { Figure } from '../../base/figure.ts';
import type { Budget } from '../../figures/uncertainty/budget.ts';
import type { MeasureResult } from '../../verdict/measureDocument.ts';
import type { BenchPoint } from '../benchDocument.ts';
import { worstOutcome } from '../claims/worstOutcome.ts';
import { isAbove, type ShownLoad } from '../loads/shownLoad.ts';
import { rmsScatter } from './rmsScatter.ts';
import type { ToldLoad } from './toldLoad.ts';

export interface PointInput {
  readonly result: MeasureResult;
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
  const missing: Figure = {
    value: null,
    reason:
      voltage === undefined ? 'the capture has no voltage channel' : 'no steady stretch under this load',
  };
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
function reactiveLoad({ loadKind }: MeasureResult): Pick<BenchPoint, 'loadKind'> {
  const kind = loadKind?.kind;
  return kind === undefined || kind === 'resistive' || kind === 'not classified' ? {} : { loadKind: kind };
}

function currentOf(
  { current, power }: MeasureResult,
  { loadW, loadFrom }: Pick<ShownLoad, 'loadW' | 'loadFrom'>,
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
  if (loadW.value === null || loadFrom === 'measured' || loadFrom === 'unknown')
    return { currentA: { value: null, reason: 'neither load nor current is known' }, currentFrom: 'unknown' };
  const currentA = loadW.value / rmsV.value;
  return {
    currentA: { value: currentA, uncertainty: (currentA * rmsV.uncertainty) / rmsV.value },
    currentFrom: loadFrom,
  };
}
