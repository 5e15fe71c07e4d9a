import { cos } from '../base/elementary/cos.ts';
import { sin } from '../base/elementary/sin.ts';
import type { HarmonicSeries } from './harmonicSeries.ts';

/**
 * The same series, earlier by a phase: v(ωu + phaseRad) as a series in ωu. Exact for every order.
 *
 * @param phaseRad - of the fundamental; order k turns by k times as much.
 * @example advancedSeries({ mean: 0, cosine: Float64Array.of(0), sine: Float64Array.of(1) }, Math.PI / 2).cosine // 1
 */
export function advancedSeries({ mean, cosine, sine }: HarmonicSeries, phaseRad: number): HarmonicSeries {
  const turned = (k: number, along: number, across: number): number =>
    along * cos((k + 1) * phaseRad) + across * sin((k + 1) * phaseRad);
  return {
    mean,
    cosine: cosine.map((c, k) => turned(k, c, sine[k]!)),
    sine: sine.map((s, k) => turned(k, s, -cosine[k]!)),
  };
}
