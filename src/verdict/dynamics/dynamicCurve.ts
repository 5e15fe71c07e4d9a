import type { LimitProvenance } from '../limits/limitTable.ts';

/** A limit that holds from a time after the event until the next point. */
export interface CurvePoint {
  /** Seconds after the event, ≥ 0. */
  readonly afterS: number;
  /** Deviation from `about` in % of nominal, signed; null: no limit from here on. */
  readonly percent: number | null;
}

/** How far a voltage or frequency may go, and for how long, after a step of the load or a change of source. */
export interface DynamicCurve {
  readonly standard: string;
  readonly edition: string;
  readonly clause: string;
  /** Which class or rule of the standard, as a person says it. */
  readonly name: string;
  readonly quantity: 'RMS voltage' | 'frequency';
  /** The level that deviations are taken from. */
  readonly about: 'nominal' | 'before' | 'after';
  /** Each ascending in time, the first at 0. */
  readonly upper: readonly CurvePoint[];
  readonly lower: readonly CurvePoint[];
  readonly provenance: LimitProvenance;
  /** What it is written for and what one capture can't give. */
  readonly remark: string;
}
