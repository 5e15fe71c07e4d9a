import { decide } from '../../verdict/rule/decide.ts';
import type { BenchClaim } from '../benchDocument.ts';
import { byLoad } from '../sweep/sweepEnds.ts';
import type { RatingClaim } from './unitClaim.ts';
import type { UnitEvidence } from './unitEvidence.ts';

/** A load reaches a rating from this share of it on: heaters and lamps come in sizes. */
export const REACHED_SHARE = 0.95;

/**
 * Whether the unit delivers the power it is rated at: the voltage keeps to its range in the captures that reach
 * it. The capture at the lowest such load decides, so that an overload shown beside it is not held against it.
 *
 * @remarks A capture lasts a moment: that the unit goes on delivering it is not shown, and the reason says so.
 */
export function judgePower(
  { text, quantity, rating }: RatingClaim,
  { points, range, rule }: Pick<UnitEvidence, 'points' | 'range' | 'rule'>,
): BenchClaim {
  const loaded = byLoad(points);
  const reached = loaded.find(({ loadW }) => loadW >= REACHED_SHARE * rating);
  const known = { text, quantity, limit: { min: rating } };
  const unjudged = (reason: string): BenchClaim => ({
    ...known,
    ...{ value: loaded.at(-1)?.loadW ?? null, outcome: 'not judged', probability: null, reason },
    ...{ worstFile: null, worstLoadW: null },
  });
  if (reached === undefined) {
    const highest = loaded.at(-1);
    return unjudged(
      highest === undefined
        ? 'no capture of a known load'
        : `no capture reaches ${rating} W: the highest load is ${Math.round(highest.loadW)} W`,
    );
  }
  if (range === null)
    return unjudged('no range of the voltage is known to hold it against: claim one or tell the nominal');
  const { point, loadW } = reached;
  const { outcome, probability } = decide(point.rmsV, range.limit, rule);
  const volts = point.rmsV.value === null ? 'no voltage measured' : `${point.rmsV.value.toFixed(1)} V`;
  return {
    ...known,
    ...{ value: loadW, outcome, probability },
    reason: `${volts} at ${Math.round(loadW)} W, while the capture lasts`,
    ...{ worstFile: point.file, worstLoadW: loadW },
  };
}
