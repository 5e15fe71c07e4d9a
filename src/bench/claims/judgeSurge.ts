import type { Figure } from '../../base/figure.ts';
import { decide } from '../../verdict/rule/decide.ts';
import type { BenchClaim } from '../benchDocument.ts';
import { byLoad } from '../sweep/sweepEnds.ts';
import { REACHED_SHARE } from './judgePower.ts';
import type { RatingClaim } from './unitClaim.ts';
import type { UnitEvidence } from './unitEvidence.ts';

/**
 * Whether the unit carries a surge: the voltage settles inside its range after a step to that load, or stands
 * in it in a capture at that load.
 *
 * @returns at best a conditional pass: how long a surge is meant to be carried, a capture does not show.
 */
export function judgeSurge(
  { text, quantity, rating }: RatingClaim,
  { points, steps, range, rule }: Pick<UnitEvidence, 'points' | 'steps' | 'range' | 'rule'>,
): BenchClaim {
  const shown: readonly { readonly file: string; readonly loadW: number; readonly volts: Figure }[] = [
    ...steps
      .filter(({ direction }) => direction === 'on')
      .flatMap(({ file, toW, afterV }) => (toW === null ? [] : [{ file, loadW: toW, volts: afterV }])),
    ...byLoad(points).map(({ point, loadW }) => ({ file: point.file, loadW, volts: point.rmsV })),
  ]
    .filter(({ loadW }) => loadW >= REACHED_SHARE * rating)
    .sort((a, b) => a.loadW - b.loadW);
  const [first] = shown;
  const known = { text, quantity, limit: { min: rating } };
  if (first === undefined || range === null) {
    const reason =
      first === undefined
        ? `no capture or step reaches ${rating} W`
        : 'no range of the voltage is known to hold it against: claim one or tell the nominal';
    return {
      ...known,
      ...{ value: null, outcome: 'not judged', probability: null, reason },
      ...{ worstFile: null, worstLoadW: null },
    };
  }
  const { outcome, probability } = decide(first.volts, range.limit, rule);
  const volts = first.volts.value === null ? 'no voltage measured' : `${first.volts.value.toFixed(1)} V`;
  return {
    ...known,
    value: first.loadW,
    outcome: outcome === 'pass' ? 'conditional pass' : outcome,
    probability,
    reason: `${volts} at ${Math.round(first.loadW)} W, while the capture lasts`,
    ...{ worstFile: first.file, worstLoadW: first.loadW },
  };
}
