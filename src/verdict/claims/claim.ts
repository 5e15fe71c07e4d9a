import type { Limit, WaveformKind } from '../measureDocument.ts';

/** What a maker says of the outlet, in a form that can be judged. */
export type Claim = WaveformClaim | FigureClaim;

export interface WaveformClaim {
  /** As given. */
  readonly text: string;
  readonly quantity: 'waveform';
  readonly kind: WaveformKind;
}

export type ClaimedFigure = 'rmsV' | 'frequencyHz' | 'thdPercent' | 'crestFactor' | 'transferS';

export interface FigureClaim {
  /** As given. */
  readonly text: string;
  readonly quantity: ClaimedFigure;
  /** In the quantity's unit. Null for a value without a tolerance: it names a nominal and can't be judged. */
  readonly limit: Limit | null;
  /** The value that stands before a tolerance, or alone; null for a range or a bound. */
  readonly target: number | null;
}
