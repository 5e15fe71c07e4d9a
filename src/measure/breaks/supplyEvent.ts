import type { Figure, MeasuredFigure } from '../../base/figure.ts';

/** The load before an event, as far as it is known. */
export interface HeldLoad {
  /** Active power in W, of the stretch that ends at the event. */
  readonly loadW?: number;
  /** How long that load was held before the event. */
  readonly heldS?: MeasuredFigure;
  /** True where the load was on when the record began: it was held for `heldS` at least. */
  readonly heldAtLeast?: boolean;
  /** True where the load last went off or down before the event: `heldS` runs since then. */
  readonly isAfterLess?: boolean;
}

/** The voltage breaks off and comes back within the record. */
export interface SupplyBreak extends HeldLoad {
  /** Up to 200 ms a transfer from one source to another, beyond that an outage. */
  readonly kind: 'transfer' | 'outage';
  /** Where it leaves the wave before and joins the wave after, on the file's own axis. */
  readonly startS: MeasuredFigure;
  readonly endS: MeasuredFigure;
  readonly durationS: MeasuredFigure;
  /** How far the fundamental after is ahead of the one before, carried on to the break's end; (−180, 180]. */
  readonly phaseJumpDeg: Figure;
  /** Largest |v| in the break, in U. */
  readonly residual: MeasuredFigure;
  /** Largest |v| within a cycle after the break, in U. */
  readonly returnPeak: MeasuredFigure;
}

/** The record starts without voltage. */
export interface StartUp extends HeldLoad {
  readonly kind: 'start-up';
  /** When voltage shows first. */
  readonly startS: MeasuredFigure;
  /** Largest |v| within the first cycle, in U. */
  readonly returnPeak: MeasuredFigure;
}

/** The voltage goes and stays away to the record's end: an overload trip, or switched off. */
export interface CutOff extends HeldLoad {
  readonly kind: 'cut-off';
  readonly startS: MeasuredFigure;
}

/** Short bursts with no voltage between: an inverter that searches for a load. */
export interface IdleBursts extends HeldLoad {
  readonly kind: 'idle bursts';
  readonly startS: MeasuredFigure;
  readonly bursts: number;
  /** Of the bursts that lie whole in the record. */
  readonly burstS: Figure;
  /** From the start of one to the start of the next. */
  readonly intervalS: Figure;
}

/** The voltage falls to 10 to 85 % of what it was, for three cycles or more. */
export interface BrownOut extends HeldLoad {
  readonly kind: 'brown-out';
  readonly startS: MeasuredFigure;
  /** When it is back over 85 %; null where the record ends in it. */
  readonly endS: Figure;
  /** To the record's end where that comes first: then it lasts so long at least. */
  readonly durationS: MeasuredFigure;
  /** Urms(1/2) before it, and the lowest in it, in U. */
  readonly before: MeasuredFigure;
  readonly lowest: MeasuredFigure;
}

/** The voltage goes three times or more in turn, each time soon after it came back. */
export interface Hiccup extends HeldLoad {
  readonly kind: 'hiccup';
  /** The first loss. */
  readonly startS: MeasuredFigure;
  /** Losses seen in the record. */
  readonly count: number;
  /** From one loss to the next. */
  readonly periodS: Figure;
  /** How long the voltage is there each time. */
  readonly onS: Figure;
}

/** The voltage starts and is gone again before three cycles. */
export interface FailedStart extends HeldLoad {
  readonly kind: 'failed start';
  readonly startS: MeasuredFigure;
  readonly endS: MeasuredFigure;
  /** Largest |v| meanwhile, in U. */
  readonly returnPeak: MeasuredFigure;
}

/** The current that a load takes when it comes on, where it is well above what it settles at. */
export interface Inrush extends HeldLoad {
  readonly kind: 'inrush';
  /** Of the peak, on the file's own axis. */
  readonly atS: MeasuredFigure;
  /** Largest |i|, in A. */
  readonly peakA: Figure;
  /** True where the current leaves the range: the peak is `peakA` at least. */
  readonly clipped: boolean;
  /** RMS of successive half cycles, from the one that the load comes on in, in A. */
  readonly halfCycleA: readonly number[];
}

export type SupplyEvent =
  | SupplyBreak
  | StartUp
  | CutOff
  | IdleBursts
  | BrownOut
  | Hiccup
  | FailedStart
  | Inrush;
