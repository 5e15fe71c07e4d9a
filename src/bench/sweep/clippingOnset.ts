import { hypot } from '../../base/elementary/hypot.ts';
import type { Figure } from '../../base/figure.ts';
import type { BenchPoint, Onset } from '../benchDocument.ts';
import { noOnset, onsetBetween } from './onset.ts';
import { byLoad } from './sweepEnds.ts';

/** Fall of the crest factor, % of what it is at the lowest load: the tops of a sine cut at about 96 % of its peak. */
export const CREST_FALL_PERCENT = 2;
/** Rise of the THD above that at the lowest load, in points. Common practice, no source; like the fall above. */
export const THD_RISE_POINTS = 2;

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
  if (lowest === undefined || loaded.length < 2) return noOnset('captures at one known load at most');
  const { kind, crestFactor, thdPercent } = lowest.point;
  if (kind !== 'pure sine' && kind !== 'distorted sine')
    return noOnset(`a wave that is ${kind} at its lowest load can’t be told by its tops`);
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
  return noOnset(`the tops are not flattened up to ${Math.round(loaded.at(-1)!.loadW)} W`);
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
