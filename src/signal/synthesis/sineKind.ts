import type { KnownKind, WaveTruth } from './knownWave.ts';

/** Pure or distorted by the usual bench threshold: THD to order 50 up to 5 %, crest factor 1.35 to 1.49. */
export function sineKind(truth: WaveTruth): KnownKind {
  const crestFactor = truth.crestFactor();
  const pure = truth.thdRatio(50) <= 0.05 && crestFactor >= 1.35 && crestFactor <= 1.49;
  return pure ? 'pure sine' : 'distorted sine';
}
