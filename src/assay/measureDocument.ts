import type { Figure } from '../base/figure.ts';
import type { Wording } from '../base/measureError.ts';
import type { Worded } from '../base/notice.ts';
import type { ClaimResult } from '../judge/claims/claim.ts';
import type { MeterComparison } from '../judge/compareMeter.ts';
import type { Finding } from '../judge/limits/findings.ts';
import type { LoadKind } from '../judge/loadKind.ts';
import type { Nominal } from '../judge/nominal/mainsNominals.ts';
import type { Waveform } from '../judge/waveform/waveform.ts';
import type { ChannelUnit, EachChannelFigure } from '../measure/figures.ts';
import type { DirectPowerFigures } from '../measure/power/measureDirectPower.ts';
import type { PowerFigures } from '../measure/power/powerFigures.ts';
import type { Harmonic } from '../measure/waveFigures.ts';
import type { LoadSeen } from './loadSeen.ts';
import type { AssayNotice } from './notices.ts';
import type { DigitiserDocument, GroupsDocument, HighBandsDocument } from './spectraDocument.ts';
import type { EventResult, ExcursionResult, StepResult } from './stepsDocument.ts';

/** The JSON of `measure --json`. Keys carry their unit; later versions add keys and rename none. */
export interface MeasureDocument {
  readonly schema: 'sineassay/measure@1';
  readonly results: readonly (MeasureResult | FailedResult)[];
}

/** A `MeasureError` in words. */
export interface ErrorDocument extends Wording {
  readonly code: string;
  /** 1-based line of the file, where there is one. */
  readonly line?: number;
  /** 1-based column (cell) of that line, where there is one. */
  readonly column?: number;
}

export interface FailedResult {
  readonly file: string;
  readonly error: ErrorDocument;
}

/** A result as the document carries it: the sentences are those of `words`. */
export type MeasureResult = Worded<AssayResult>;

/** What was found of one channel, without a sentence in it. */
export interface AssayResult {
  readonly file: string;
  /** Of the capture's bytes, lower-case hexadecimal. */
  readonly sha256: string;
  /** The unit under test, as told. */
  readonly label?: string;
  /** As told, for example `300 W resistive`. */
  readonly load?: string;
  /** The load of the stretch that the figures describe; absent where nothing is known of it. */
  readonly loadSeen?: LoadSeen;
  readonly capture: CaptureSummary;
  readonly nominal: Nominal | null;
  readonly voltage?: VoltageFigures;
  readonly current?: CurrentFigures;
  /** What the load takes, where a current channel was captured too. */
  readonly power?: PowerDocument;
  readonly loadKind?: LoadKind;
  /** What the unit takes in at its DC input, where those channels were named. */
  readonly input?: InputDocument;
  readonly waveform: Waveform;
  readonly claims: readonly ClaimResult[];
  /** Load steps of a voltage; empty where there is none. */
  readonly steps: readonly StepResult[];
  /** Breaks of the supply; empty where there is none. */
  readonly events: readonly EventResult[];
  /** Dips, swells and interruptions against the nominal voltage; empty where there is none. */
  readonly excursions: readonly ExcursionResult[];
  readonly findings: readonly Finding[];
  readonly meter?: MeterComparison;
  readonly notices: readonly AssayNotice[];
}

/** The powers of IEEE 1459; `channel` is the current's. */
export type PowerDocument = { readonly channel: string } & Omit<PowerFigures, 'notices'>;

/** Mean power, ripple and conversion efficiency of a DC input. */
export type InputDocument = {
  readonly voltageChannel: string;
  readonly currentChannel: string;
  /** AC power over DC power; absent where no AC power was measured. */
  readonly conversionEfficiencyPercent?: Figure;
} & Omit<DirectPowerFigures, 'notices'>;

export interface CaptureSummary {
  readonly samples: number;
  readonly sampleRateHz: number;
  readonly startS: number;
  readonly durationS: number;
  /** Resolution that the record shows on the measured channel; null where it shows none. */
  readonly bits: number | null;
  readonly channels: readonly {
    readonly name: string;
    readonly quantity: 'voltage' | 'current' | 'other';
    readonly unit: string;
    readonly scale: number;
  }[];
  readonly layout: string;
  /** How well the digitiser served the measured channel. */
  readonly digitiser?: DigitiserDocument;
}

/** A channel's section: the figures of the catalogue, then what is no figure. */
interface ChannelSection<U extends ChannelUnit> extends Spectra<U> {
  readonly channel: string;
  readonly spanS: readonly [number, number];
  readonly cyclesUsed: number;
  readonly thdOrders: number;
}

/** Harmonics by windows, and what lies above 2 kHz. */
interface Spectra<U extends ChannelUnit> {
  /** Absent where the record holds no window of 10 or 12 cycles. */
  readonly harmonicGroups?: GroupsDocument<U>;
  /** Absent where the sample rate does not reach above 2 kHz. */
  readonly highBands?: HighBandsDocument<U>;
}

export interface VoltageFigures extends EachChannelFigure<Figure, 'V'>, ChannelSection<'V'> {
  readonly harmonics: readonly ({ readonly rmsV: number } & HarmonicDocument)[];
}

export interface CurrentFigures extends EachChannelFigure<Figure, 'A'>, ChannelSection<'A'> {
  readonly harmonics: readonly ({ readonly rmsA: number } & HarmonicDocument)[];
}

type HarmonicDocument = Omit<Harmonic, 'rms'>;
