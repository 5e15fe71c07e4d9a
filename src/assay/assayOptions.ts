import type { Claim } from '../judge/claims/claim.ts';
import type { DecisionRule } from '../judge/decide.ts';
import type { ToldNominal } from '../judge/nominal/mainsNominals.ts';
import type { Instrument } from '../measure/doubt/instrument.ts';
import type { ReadCaptureOptions } from '../read/readCapture.ts';
import type { Rescaling } from '../read/rescaleCapture.ts';
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

/** All that a person can tell of one capture. */
export type ToldOptions = AssayOptions & ReadCaptureOptions;

/** The same where what is not told may stand as undefined, as forms and flags have it. */
export type PartlyTold = { readonly [Key in keyof ToldOptions]?: ToldOptions[Key] | undefined };

/**
 * What was told of a capture with everything else as it is by default, always in the same order: so that the sheet of
 * a capture carries the same text wherever it was told.
 */
export function completeOptions(told: PartlyTold): ToldOptions {
  return {
    claims: told.claims ?? [],
    scales: told.scales ?? [],
    inverted: told.inverted ?? [],
    rule: told.rule ?? 'guarded',
    orders: told.orders ?? 50,
    sineThdPercent: told.sineThdPercent ?? 5,
    perWindow: told.perWindow ?? false,
    ...(told.label === undefined ? {} : { label: told.label }),
    ...(told.load === undefined ? {} : { load: told.load }),
    ...(told.nominal === undefined ? {} : { nominal: told.nominal }),
    ...(told.voltage === undefined ? {} : { voltage: told.voltage }),
    ...(told.current === undefined ? {} : { current: told.current }),
    ...(told.directInput === undefined ? {} : { directInput: told.directInput }),
    ...(told.skews === undefined ? {} : { skews: told.skews }),
    ...(told.instrument === undefined ? {} : { instrument: told.instrument }),
    ...(told.sampleRateHz === undefined ? {} : { sampleRateHz: told.sampleRateHz }),
    ...(told.meter === undefined ? {} : { meter: told.meter }),
  };
}
