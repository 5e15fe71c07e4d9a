import type { Figure, MeasuredFigure } from '../base/figure.ts';
import type { CurveQuantity } from '../judge/curves/dynamicCurve.ts';

/** A load step, by the definitions of the README. */
export interface StepResult {
  readonly atS: MeasuredFigure;
  readonly direction: 'on' | 'off';
  readonly directionBy: 'current' | 'voltage';
  readonly beforeV: MeasuredFigure;
  readonly afterV: MeasuredFigure;
  readonly extremeV: MeasuredFigure;
  readonly deviationPercent: Figure;
  readonly afterPercent: Figure;
  readonly overshootPercent: Figure;
  readonly recoveryS: Figure;
  readonly recovery: readonly { readonly bandPercent: number; readonly s: Figure }[];
  readonly beforeHz: Figure;
  readonly afterHz: Figure;
  readonly extremeHz: Figure;
  /** THD of the settled stretches, and of what lies between. */
  readonly thdBeforePercent: Figure;
  readonly thdDuringPercent: Figure;
  readonly thdAfterPercent: Figure;
  readonly curves: readonly CurveFinding[];
}

/** A step held against a published curve: always information, for a capture is no type test. */
export interface CurveFinding {
  readonly standard: string;
  readonly edition: string;
  readonly clause: string;
  readonly name: string;
  readonly quantity: CurveQuantity;
  readonly side: 'inside' | 'outside';
  /** Where it comes nearest to the limit or farthest past it: plain numbers, in s and % of nominal. */
  readonly afterS: number;
  readonly percent: number;
  readonly limitPercent: number;
  readonly marginPercent: number;
  /** False where the record ends before the curve's last limit begins. */
  readonly reachesEnd: boolean;
  readonly outcome: 'information';
  readonly provenance: 'public' | 'memory';
  readonly remark: string;
}

/** The load before an event, as far as it is known; `heldS` is at least that where the record began under it. */
interface HeldLoadResult {
  readonly loadW?: number;
  readonly heldS?: MeasuredFigure;
  readonly heldAtLeast?: boolean;
  /** True where the load last went off or down before the event: `heldS` runs since then. */
  readonly isAfterLess?: boolean;
}

/** A break of the supply, its start or end, or what a load does to it. */
export type EventResult = HeldLoadResult &
  (
    | {
        readonly kind: 'transfer' | 'outage';
        readonly startS: MeasuredFigure;
        readonly endS: MeasuredFigure;
        readonly durationS: MeasuredFigure;
        readonly phaseJumpDeg: Figure;
        readonly residualV: MeasuredFigure;
        readonly returnPeakV: MeasuredFigure;
      }
    | { readonly kind: 'start-up'; readonly startS: MeasuredFigure; readonly returnPeakV: MeasuredFigure }
    | { readonly kind: 'cut-off'; readonly startS: MeasuredFigure }
    | {
        readonly kind: 'idle bursts';
        readonly startS: MeasuredFigure;
        readonly bursts: number;
        readonly burstS: Figure;
        readonly intervalS: Figure;
      }
    | {
        readonly kind: 'brown-out';
        readonly startS: MeasuredFigure;
        /** Null where the record ends in it; `durationS` is then at least that. */
        readonly endS: Figure;
        readonly durationS: MeasuredFigure;
        readonly beforeV: MeasuredFigure;
        readonly lowestV: MeasuredFigure;
      }
    | {
        readonly kind: 'hiccup';
        readonly startS: MeasuredFigure;
        readonly count: number;
        /** From one loss to the next, and how long the voltage is there each time. */
        readonly periodS: Figure;
        readonly onS: Figure;
      }
    | {
        readonly kind: 'failed start';
        readonly startS: MeasuredFigure;
        readonly endS: MeasuredFigure;
        readonly returnPeakV: MeasuredFigure;
      }
    | {
        readonly kind: 'inrush';
        readonly atS: MeasuredFigure;
        /** At least that where `clipped`. */
        readonly peakA: Figure;
        readonly clipped: boolean;
        /** RMS of successive half cycles, from the one that the load comes on in. */
        readonly halfCycleA: readonly number[];
      }
  );

/** Urms(1/2) past a threshold of 90, 110 or 10 % of nominal. Plain numbers. */
export interface ExcursionResult {
  readonly kind: 'dip' | 'swell' | 'interruption';
  readonly startS: number;
  readonly endS: number;
  /** False where the record starts or ends inside it; the duration is then a lower bound. */
  readonly startSeen: boolean;
  readonly endSeen: boolean;
  readonly durationS: number;
  readonly extremeV: number;
}
