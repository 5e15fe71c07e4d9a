import type { Figure } from '../base/figure.ts';
import type { EachFigure } from './figures.ts';
import type { MeasureNotice } from './notices.ts';

/** One harmonic, in plain numbers. */
export interface Harmonic {
  /** 1 = the fundamental. */
  readonly order: number;
  /** RMS in U. */
  readonly rms: number;
  /** Of the fundamental, 0 and up. */
  readonly percent: number;
  /** φn in Σ √2 Vn sin(nωt + φn), t from a rising zero of the fundamental; (−180, 180]. */
  readonly phaseDeg: number;
  /** Of `percent`, about 95 % sure; not for the fundamental, which is 100 % by definition. */
  readonly uncertaintyPercent?: number;
  /** Where `percent` can't be told from the floor: what it is at most. */
  readonly notAbovePercent?: number;
}

/** What is measured on one channel; U stands for its unit, volts or amperes. */
export interface WaveFigures extends EachFigure<Figure> {
  /** The stretch measured, on the file's own time axis. */
  readonly spanS: readonly [number, number];
  /** Cycles inside the span, not rounded. */
  readonly cyclesUsed: number;
  /** Highest order in `harmonics` and in the THD. */
  readonly thdOrders: number;
  /** Orders 1 to thdOrders, without a hole. Empty where there is no period. */
  readonly harmonics: readonly Harmonic[];
  readonly notices: readonly MeasureNotice[];
}
