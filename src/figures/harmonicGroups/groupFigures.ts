import type { Notice } from '../../base/notice.ts';
import type { GroupDistortion } from './groupDistortion.ts';
import type { OrderGroups } from './orderGroups.ts';

/** Orders and distortion of one window, or of several aggregated. */
export interface GroupValues {
  /** Orders 1 to the highest that the sample rate lets measure, 50 at most. */
  readonly orders: readonly OrderGroups[];
  /** To order 40 and to order 50, as far as `orders` goes; to its highest where that is below 40. */
  readonly distortion: readonly GroupDistortion[];
  /** Orders 14 to 40; null where `orders` ends below. */
  readonly partialWeightedRatio: number | null;
}

/** Harmonics by the group method of IEC 61000-4-7. RMS values in U. */
export interface GroupFigures {
  readonly cyclesPerWindow: 10 | 12;
  /** Ten or twelve measured cycles. */
  readonly windowS: number;
  /** Of the spectrum: the fundamental over the cycles of a window. */
  readonly lineSpacingHz: number;
  /** Each window, in order; at least one. */
  readonly windows: readonly GroupValues[];
  /** Over all windows: root of the mean of squares, factors made of the aggregated lines. */
  readonly all: GroupValues;
  /** Over each whole 15 windows (150 or 180 cycles); empty where the record holds fewer. */
  readonly threeSeconds: readonly GroupValues[];
  /** The highest that each value reaches behind the smoothing of 1.5 s; null below 15 windows. */
  readonly smoothedHighest: readonly OrderGroups[] | null;
  /** Which windows and aggregates the record allowed, one sentence. */
  readonly extent: string;
  readonly notices: readonly Notice[];
}
