import type { Notice } from '../base/notice.ts';
import type { Capture, Channel } from '../capture/capture.ts';
import { type Rescaling, rescaleCapture } from '../capture/rescaleCapture.ts';
import { selectVoltageChannels } from '../capture/selectChannel.ts';
import { ASSUMED_INSTRUMENT, type Instrument } from '../figures/uncertainty/instrument.ts';
import type { Assay } from './assay.ts';
import { budgetsOf } from './assaying/budgetsOf.ts';
import { captureSummary } from './assaying/captureSummary.ts';
import { currentFigures, voltageFigures } from './assaying/channelFigures.ts';
import { courseOf, courseWithNominal, steadyNotice } from './assaying/course.ts';
import { type CurrentAndPower, currentAndPower } from './assaying/currentAndPower.ts';
import { currentOf, skewOf } from './assaying/currentOf.ts';
import { type DirectInputChannels, directInput } from './assaying/directInput.ts';
import { keyedByUnit } from './assaying/keyedByUnit.ts';
import { measureWithMeter } from './assaying/measureWithMeter.ts';
import { methodLines } from './assaying/methodLines.ts';
import { spectra } from './assaying/spectra.ts';
import { digitiserDocument, groupsDocument, highBandsDocument } from './assaying/spectraDocuments.ts';
import { type CourseResults, courseResults } from './assaying/stepDocuments.ts';
import { traceOf } from './assaying/traceOf.ts';
import { withoutDoubles } from './assaying/withoutDoubles.ts';
import type { Claim } from './claims/claim.ts';
import { claimedNominal } from './claims/claimedNominal.ts';
import { judgeClaim } from './claims/judgeClaim.ts';
import { findings } from './limits/findings.ts';
import type { CurrentFigures, VoltageFigures } from './measureDocument.ts';
import { inferNominal } from './nominal/inferNominal.ts';
import type { ToldNominal } from './nominal/mainsNominals.ts';
import type { DecisionRule } from './rule/decide.ts';
import { SINE_THD_PERCENT } from './waveform/classifyWave.ts';

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
  /** Names of channels to turn upside down. */
  readonly inverted?: readonly string[];
  /** Name of the current channel; absent: the current that goes with the voltage, where there is one. */
  readonly current?: string;
  /** Channels at the unit's DC input. */
  readonly directInput?: DirectInputChannels;
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

/**
 * The whole way from a capture to its results: one a measured channel.
 *
 * @returns at least one, in the order of the channels.
 * @throws MeasureError where a channel named isn't there or the wave can't be measured.
 */
export function assayCapture(
  capture: Capture,
  source: CaptureSource,
  options: AssayOptions = {},
): readonly Assay[] {
  const scaled = rescaleCapture(capture, {
    scales: options.scales ?? [],
    inverted: options.inverted ?? [],
    measured: options.voltage,
  });
  const { channels, notices } = selectVoltageChannels(scaled, options.voltage);
  const given = [...scaled.notices, ...notices];
  return channels.map((channel) => assayChannel(scaled, channel, source, given, options));
}

function assayChannel(
  capture: Capture,
  channel: Channel,
  source: CaptureSource,
  given: readonly Notice[],
  options: AssayOptions,
): Assay {
  const { claims = [], rule = 'guarded', sineThdPercent = SINE_THD_PERCENT } = options;
  const isVoltage = channel.quantity === 'voltage';
  const instrument = { ...ASSUMED_INSTRUMENT, ...options.instrument };
  const drawn = isVoltage ? currentOf(capture, channel, options) : { channel: null, notices: [] };
  const seen = isVoltage ? courseOf(capture, channel, drawn.channel) : null;
  const { wave, waveform, meter, scaleSource, calibrated } = measureWithMeter(capture, channel, instrument, {
    ...options,
    stretch: seen === null || seen.steady.whole ? undefined : seen.steady,
  });
  const { figures } = wave;
  const told = { ...claimedNominal(claims), ...options.nominal };
  const inferred = isVoltage
    ? inferNominal(figures.rms, figures.frequencyHz, told)
    : { nominal: null, notices: [] };
  const { nominal } = inferred;
  const more = spectra(capture, calibrated, wave, nominal);
  const context = { wave, instrument, scaleSource, perWindow: options.perWindow ?? false };
  const sections = {
    ...(more.groups === null ? {} : { harmonicGroups: groupsDocument(more.groups, context) }),
    ...(more.high === null ? {} : { highBands: highBandsDocument(more.high, context) }),
  };
  const load: CurrentAndPower =
    drawn.channel === null
      ? { notices: [] }
      : currentAndPower({
          capture,
          voltage: wave,
          current: drawn.channel,
          instrument,
          scaleSource,
          orders: options.orders ?? 50,
          ...skewOf(channel.name, drawn.channel.name, options.skews ?? []),
        });
  const { notices: loadNotices, ...loadSections } = load;
  const supply =
    options.directInput === undefined
      ? null
      : directInput(capture, options.directInput, wave, load.power, instrument, ({ name }) =>
          (options.scales ?? []).some((scale) => scale.channel === name),
        );
  // A pulse train or a burst is no supply: what changes along it is its own.
  const course =
    seen === null || waveform.kind === 'not classified'
      ? NO_COURSE
      : courseResults({
          course: courseWithNominal(seen, capture, calibrated, drawn.channel, nominal, {
            instrument,
            scaleSource,
          }),
          capture,
          voltage: calibrated,
          nominal,
          instrument,
          orders: options.orders ?? 50,
          isResistiveFullStep: false,
        });
  const { dynamics, ...courseSections } = course;
  const transfersS = course.events.flatMap((event) => (event.kind === 'transfer' ? [event.durationS] : []));
  const budgets = budgetsOf(figures, isVoltage ? 'V' : 'A');
  const result = {
    ...source,
    ...(options.label === undefined ? {} : { label: options.label }),
    ...(options.load === undefined ? {} : { load: options.load }),
    capture: { ...captureSummary(capture, calibrated, wave), digitiser: digitiserDocument(more.digitiser) },
    nominal,
    ...(isVoltage
      ? {
          voltage: {
            ...voltageFigures(channel.name, figures),
            ...keyedByUnit<Partial<VoltageFigures>>(sections, 'V'),
          },
          ...loadSections,
          ...(supply === null ? {} : { input: supply.input }),
        }
      : {
          current: {
            ...currentFigures(channel.name, figures),
            ...keyedByUnit<Partial<CurrentFigures>>(sections, 'A'),
          },
        }),
    waveform,
    claims: claims.map((claim) => judgeClaim(claim, { figures, waveform, rule, sineThdPercent, transfersS })),
    ...courseSections,
    // Limits are for alternating voltages: DC, noise and raw switching have nothing to hold against them.
    findings:
      isVoltage && waveform.kind !== 'not classified'
        ? findings(figures, waveform, nominal, rule, more.groups)
        : [],
    ...(meter === null ? {} : { meter }),
    notices: [
      ...given,
      ...(seen === null || seen.steady.whole ? [] : [steadyNotice(seen, capture)]),
      ...inferred.notices,
      ...withoutDoubles(figures.notices, more.notices),
      ...drawn.notices,
      ...loadNotices,
      ...(supply?.notices ?? []),
    ],
  };
  return {
    result,
    trace: traceOf(wave, isVoltage ? 'V' : 'A'),
    dynamics,
    budgets,
    method: methodLines({
      wave,
      instrument,
      told: options.instrument ?? {},
      scaleSource,
      rule,
      sineThdPercent,
      scale: calibrated.scale,
      budgets,
    }),
  };
}

const NO_COURSE: CourseResults = { steps: [], events: [], excursions: [], dynamics: null };
