import type { Rescaling } from '../../capture/rescaleCapture.ts';
import type { Instrument } from '../../figures/uncertainty/instrument.ts';
import type { Claim } from '../claims/claim.ts';
import type { ToldNominal } from '../nominal/mainsNominals.ts';
import type { DecisionRule } from '../rule/decide.ts';
import type { DirectInputChannels } from './directInput.ts';

/** What a person tells about a capture. */
export interface AssayOptions {
  readonly claims?: readonly Claim[];
  /** The unit under test. */
  readonly label?: string;
  /** For example `300 W resistive`. */
  readonly load?: string;
  readonly nominal?: ToldNominal;
  /** A channel's name, `all`, or `A-B`; the first voltage channel when absent. */
  readonly voltage?: string;
  readonly scales?: Rescaling['scales'];
  /** True where nobody else reads the capture: its samples are changed in place. Default false. */
  readonly scalesInPlace?: boolean;
  /** Names of channels to turn upside down. */
  readonly inverted?: readonly string[];
  /** Name of the current channel; absent: the current that goes with the voltage, where there is one. */
  readonly current?: string;
  /** Channels at the unit's DC input. */
  readonly directInput?: DirectInputChannels;
  /** True only for a step of a resistor from nothing to all of the rating, or back: a rule for such steps then counts. */
  readonly isResistiveFullStep?: boolean;
  /** Delays of channels, seconds: positive where a channel shows an event late. */
  readonly skews?: readonly { readonly channel: string; readonly seconds: number }[];
  /** What is known of the measuring chain; the rest is ASSUMED_INSTRUMENT. */
  readonly instrument?: Partial<Instrument>;
  /** A multimeter's reading at the same time. */
  readonly meter?: { readonly readingV: number; readonly dcCoupled: boolean };
  /** Default `guarded`. */
  readonly rule?: DecisionRule;
  /** List each window of 10 or 12 cycles. Default false. */
  readonly perWindow?: boolean;
  /** Highest harmonic. Default 50. */
  readonly orders?: number;
  /** THD up to which a smooth wave is a pure sine. Default SINE_THD_PERCENT. */
  readonly sineThdPercent?: number;
}

/** The file that a capture was read from, as results name it. */
export interface CaptureSource {
  readonly file: string;
  /** Of its bytes, lower-case hexadecimal. */
  readonly sha256: string;
}
