import type { WaveformKind } from './kinds.ts';

export interface Waveform {
  readonly kind: WaveformKind;
  /** Each a sentence or clause a person can follow, most telling first. */
  readonly reasons: readonly string[];
  /** Plateaus found; 0 for a smooth wave. */
  readonly levels: number;
  /** True where the doubt reaches the threshold that decided: the words say "at the edge". */
  readonly atTheEdge: boolean;
}
