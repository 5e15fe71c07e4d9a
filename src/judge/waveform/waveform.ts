import type { Reason } from '../../base/notice.ts';
import type { WaveformKind } from './kinds.ts';

export interface Waveform {
  readonly kind: WaveformKind;
  /** Each a clause, or what it is made of; most telling first. */
  readonly reasons: readonly Reason[];
  /** Plateaus found; 0 for a smooth wave. */
  readonly levels: number;
  /** True where the doubt reaches the threshold that decided: the words say "at the edge". */
  readonly atTheEdge: boolean;
}
