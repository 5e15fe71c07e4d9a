import { hypot } from '../../base/elementary.ts';
import type { Figure } from '../../base/figure.ts';
import { type Limit, marginToLimit } from '../../judge/decide.ts';
import type { Nominal } from '../../judge/nominal/mainsNominals.ts';
import { isSmooth } from '../../judge/waveform/kinds.ts';
import type { BenchPoint, Onset, UnitResult, VoltageRange } from '../benchDocument.ts';
import { type BenchReason, lacking } from '../reasons.ts';
import { byLoad } from './regulation.ts';

/** Fall of the crest factor, % of what it is at the lowest load: the tops of a sine cut at about 96 % of its peak. */
const CREST_FALL_PERCENT = 2;
/** Rise of the THD above that at the lowest load, in points. Common practice, no source; like the fall above. */
const THD_RISE_POINTS = 2;

/**
 * The load from which a sine's tops are flattened: the crest factor has fallen, or the THD risen, against the
 * lowest load by more than a threshold and by more than the uncertainty of the difference.
 *
 * @returns no value, with the reason, for a wave that has plateaus at its lowest load, and where no capture
 * shows it.
 */
export function clippingOnset(points: readonly BenchPoint[]): Onset {
  const loaded = byLoad(points.filter(({ lost }) => lost === undefined));
  const [lowest] = loaded;
  if (lowest === undefined || loaded.length < 2) return noOnset({ code: 'onset.oneLoad' });
  const { kind, crestFactor, thdPercent } = lowest.point;
  if (!isSmooth(kind)) return noOnset({ code: 'onset.plateaus', kind });
  for (const [i, { point, loadW }] of loaded.entries()) {
    if (i === 0) continue;
    const before = loaded[i - 1]!;
    const byCrest = crossing(
      crestFactor,
      before.point.crestFactor,
      point.crestFactor,
      -crestFall(crestFactor),
    );
    if (byCrest !== null) {
      const { from, to, threshold } = byCrest;
      const shownBy = `crest factor ${from.toFixed(3)} to ${to.toFixed(3)}`;
      return onsetBetween([before.loadW, from], [loadW, to], threshold, shownBy);
    }
    const byThd = crossing(thdPercent, before.point.thdPercent, point.thdPercent, THD_RISE_POINTS);
    if (byThd !== null) {
      const { from, to, threshold } = byThd;
      const shownBy = `THD ${from.toFixed(1)} to ${to.toFixed(1)} %`;
      return onsetBetween([before.loadW, from], [loadW, to], threshold, shownBy);
    }
  }
  return noOnset({ code: 'onset.notUpTo', loadW: loaded.at(-1)!.loadW });
}

function crestFall({ value }: Figure): number {
  return ((value ?? 0) * CREST_FALL_PERCENT) / 100;
}

/** The quantity at both captures and the threshold that it crosses; null where it doesn't, or not surely. */
function crossing(
  lowest: Figure,
  before: Figure,
  now: Figure,
  change: number,
): { readonly from: number; readonly to: number; readonly threshold: number } | null {
  if (lowest.value === null || before.value === null || now.value === null) return null;
  const difference = (now.value - lowest.value) * Math.sign(change);
  const doubt = hypot(now.uncertainty, lowest.uncertainty);
  if (!(difference > Math.abs(change) && difference > doubt)) return null;
  return { from: before.value, to: now.value, threshold: lowest.value + change };
}

/** An onset that was not seen, and why. */
function noOnset(reason: BenchReason): Onset {
  return { atW: lacking(reason), betweenW: null, shownBy: '' };
}

/**
 * An onset between two captures: straight between them to where the quantity crosses its threshold.
 *
 * @param from - load and quantity of the last capture before.
 * @param to - of the first after.
 * @param threshold - between the two quantities, else the nearer end is taken.
 * @returns the uncertainty reaches to the farther of the two loads: no capture says more.
 */
function onsetBetween(
  from: readonly [loadW: number, quantity: number],
  to: readonly [loadW: number, quantity: number],
  threshold: number,
  shownBy: string,
): Onset {
  const [[fromW, before], [toW, after]] = [from, to];
  const share = after === before ? 0.5 : Math.min(1, Math.max(0, (threshold - before) / (after - before)));
  const atW = fromW + share * (toW - fromW);
  return {
    atW: { value: atW, uncertainty: Math.max(atW - fromW, toW - atW) },
    betweenW: [fromW, toW],
    shownBy,
  };
}

/** The range that the voltage should keep to: the one claimed, else ±10 % of nominal; null where neither is known. */
export function voltageRange(claimed: Limit | null, nominal: Nominal | null): VoltageRange | null {
  if (claimed !== null) return { limit: claimed, from: 'claim' };
  if (nominal === null) return null;
  const { voltageV } = nominal;
  return { limit: { min: 0.9 * voltageV, max: 1.1 * voltageV }, from: 'nominal ±10 %' };
}

/**
 * The load from which the RMS voltage lies outside its range, by its value alone, whatever its doubt; of the captures in
 * which the output was held.
 */
export function rangeExit(
  points: readonly BenchPoint[],
  range: VoltageRange | null,
): UnitResult['leavesRange'] {
  if (range === null) return { ...noOnset({ code: 'range.unknown' }), range };
  const loaded = byLoad(points).flatMap(({ point, loadW }) =>
    point.rmsV.value === null || point.lost !== undefined ? [] : [{ loadW, volts: point.rmsV.value }],
  );
  const { limit } = range;
  const at = loaded.findIndex(({ volts }) => marginToLimit(volts, limit) < 0);
  const [before, after] = [loaded[at - 1], loaded[at]];
  if (after === undefined) {
    const last = loaded.at(-1);
    return {
      ...noOnset(
        last === undefined ? { code: 'sweep.noKnownLoad' } : { code: 'range.keptUpTo', loadW: last.loadW },
      ),
      range,
    };
  }
  if (before === undefined) {
    return { ...noOnset({ code: 'range.leftAtOnce', loadW: after.loadW }), range };
  }
  const threshold = limit.min !== undefined && after.volts < limit.min ? limit.min : limit.max!;
  const shownBy = `${before.volts.toFixed(1)} to ${after.volts.toFixed(1)} V`;
  return {
    ...onsetBetween([before.loadW, before.volts], [after.loadW, after.volts], threshold, shownBy),
    range,
  };
}
