import type { Figure, MeasuredFigure } from '../../base/figure.ts';

/** The voltage breaks off and comes back within the record. */
export interface SupplyBreak {
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
export interface StartUp {
  readonly kind: 'start-up';
  /** When voltage shows first. */
  readonly startS: MeasuredFigure;
  /** Largest |v| within the first cycle, in U. */
  readonly returnPeak: MeasuredFigure;
}

/** The voltage goes and stays away to the record's end: an overload trip, or switched off. */
export interface CutOff {
  readonly kind: 'cut-off';
  readonly startS: MeasuredFigure;
}

/** Short bursts with no voltage between: an inverter that searches for a load. */
export interface IdleBursts {
  readonly kind: 'idle bursts';
  readonly startS: MeasuredFigure;
  readonly bursts: number;
  /** Of the bursts that lie whole in the record. */
  readonly burstS: Figure;
  /** From the start of one to the start of the next. */
  readonly intervalS: Figure;
}

export type SupplyEvent = SupplyBreak | StartUp | CutOff | IdleBursts;
