import type { KnownWave } from './knownWave.ts';
import { sineWithHarmonics } from './sineWithHarmonics.ts';

/** A pure sine, peak 1. */
export function sineWave(): KnownWave {
  return sineWithHarmonics([]);
}
