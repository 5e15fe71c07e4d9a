import { asin } from '../../base/elementary/asin.ts';
import { cos } from '../../base/elementary/cos.ts';
import { sin } from '../../base/elementary/sin.ts';
import { harmonicOf } from './harmonicOf.ts';
import type { KnownWave } from './knownWave.ts';
import { quadratureTruth } from './quadratureTruth.ts';
import { sineKind } from './sineKind.ts';
import { waveTruth } from './waveTruth.ts';

/**
 * A sine of peak 1 cut off flat at ±clip, as an overloaded inverter gives it.
 *
 * With θ = asin(clip) the quarter wave is sin x up to θ and clip from there on.
 *
 * @param clip - over the sine's own peak, above 0, at most 1.
 */
export function clippedSine(clip: number): KnownWave {
  if (!(clip > 0 && clip <= 1)) throw new RangeError(`clip must lie above 0 and up to 1, not ${clip}`);
  const theta = asin(clip);
  const corner = theta / (2 * Math.PI);
  const at = (phaseCycles: number): number => Math.min(clip, Math.max(-clip, sin(2 * Math.PI * phaseCycles)));
  const truth = waveTruth({
    ...quadratureTruth(at, [corner, 0.5 - corner, 0.5 + corner, 1 - corner], 1),
    rms: Math.sqrt((theta - sin(2 * theta) / 2 + clip ** 2 * (Math.PI - 2 * theta)) / Math.PI),
    mean: 0,
    peak: clip,
    trough: -clip,
    harmonic: (order) => harmonicOf(0, order % 2 === 0 ? 0 : (4 / Math.PI) * quarterSine(theta, clip, order)),
  });
  return { kind: sineKind(truth), at, truth };
}

/** ∫ v sin nx over the quarter wave. */
function quarterSine(theta: number, clip: number, n: number): number {
  const flat = (clip * cos(n * theta)) / n;
  if (n === 1) return theta / 2 - sin(2 * theta) / 4 + flat;
  const below = sin((n - 1) * theta) / (n - 1);
  const above = sin((n + 1) * theta) / (n + 1);
  return (below - above) / 2 + flat;
}
