import type { MeasuredFigure } from '../../base/figure.ts';
import type { WaveFigures } from '../../figures/waveFigures.ts';
import type { Waveform } from '../measureDocument.ts';
import type { DecisionRule } from '../rule/decide.ts';

/** What a capture shows, for judging claims by. */
export interface ClaimEvidence {
  /** Of the voltage channel. */
  readonly figures: WaveFigures;
  readonly waveform: Waveform;
  /** Durations of the transfers seen, s; absent or empty: none. */
  readonly transfersS?: readonly MeasuredFigure[];
  /** Why volts and shape can't be told, where the scope cut the wave off; its figures are those of what is left. */
  readonly cutOff?: string;
  readonly rule: DecisionRule;
  /** Highest THD of a pure sine, in percent; 5 where nobody said otherwise, which is common practice without a source. */
  readonly sineThdPercent?: number;
}
