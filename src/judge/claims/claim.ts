import type { MeasuredFigure } from '../../base/figure.ts';
import type { Reason } from '../../base/notice.ts';
import type { WaveFigures } from '../../measure/waveFigures.ts';
import type { DecisionRule, Limit, Outcome } from '../decide.ts';
import type { WaveformKind } from '../waveform/kinds.ts';
import type { Waveform } from '../waveform/waveform.ts';
import type { ClaimedFigure } from './claimedQuantities.ts';

/** What a maker says of the outlet, in a form that can be judged. */
export type Claim = WaveformClaim | FigureClaim;

export interface WaveformClaim {
  /** As given. */
  readonly text: string;
  readonly quantity: 'waveform';
  readonly kind: WaveformKind;
}

export interface FigureClaim {
  /** As given. */
  readonly text: string;
  readonly quantity: ClaimedFigure;
  /** In the quantity's unit. Null for a value without a tolerance: it names a nominal and can't be judged. */
  readonly limit: Limit | null;
  /** The value that stands before a tolerance, or alone; null for a range or a bound. */
  readonly target: number | null;
}

export interface ClaimResult {
  /** As given. */
  readonly text: string;
  readonly quantity: string;
  readonly value: number | string | null;
  readonly limit: Limit | null;
  /** `not judged`: the capture can't tell; `reason` says why. */
  readonly outcome: Outcome | 'not judged';
  /** Of conformance, 0 to 1; null where nothing was computed. */
  readonly probability: number | null;
  readonly reason?: Reason;
}

/** What a capture shows, for judging claims by. */
export interface ClaimEvidence {
  /** Of the voltage channel. */
  readonly figures: WaveFigures;
  readonly waveform: Waveform;
  /** Durations of the transfers seen, s; absent or empty: none. */
  readonly transfersS?: readonly MeasuredFigure[];
  /** Why volts and shape can't be told, where the scope cut the wave off; its figures are those of what is left. */
  readonly tooLittle?: Reason;
  /** Why what was measured is not the output's voltage at all; absent where it is. */
  readonly noOutput?: Reason;
  readonly rule: DecisionRule;
  /** Highest THD of a pure sine, in percent; 5 where nobody said otherwise, which is common practice without a source. */
  readonly sineThdPercent?: number;
}
