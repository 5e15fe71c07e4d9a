import type { Notice } from '../base/notice.ts';
import type { Capture, Channel } from '../capture/capture.ts';
import { type Rescaling, rescaleCapture } from '../capture/rescaleCapture.ts';
import { selectVoltageChannels } from '../capture/selectChannel.ts';
import type { MeasuredWave } from '../figures/measuredWave.ts';
import { measureWave } from '../figures/measureWave.ts';
import { ASSUMED_INSTRUMENT, type Instrument } from '../figures/uncertainty/instrument.ts';
import type { ScaleSource } from '../figures/uncertainty/scaleComponents.ts';
import type { Assay } from './assay.ts';
import { budgetsOf } from './assaying/budgetsOf.ts';
import { captureSummary } from './assaying/captureSummary.ts';
import { currentFigures, voltageFigures } from './assaying/channelFigures.ts';
import { keyedByUnit } from './assaying/keyedByUnit.ts';
import { methodLines } from './assaying/methodLines.ts';
import { spectra } from './assaying/spectra.ts';
import { digitiserDocument, groupsDocument, highBandsDocument } from './assaying/spectraDocuments.ts';
import { traceOf } from './assaying/traceOf.ts';
import type { Claim } from './claims/claim.ts';
import { claimedNominal } from './claims/claimedNominal.ts';
import { judgeClaim } from './claims/judgeClaim.ts';
import { findings } from './limits/findings.ts';
import type { CurrentFigures, MeterComparison, VoltageFigures, Waveform } from './measureDocument.ts';
import { compareMeter } from './meter/compareMeter.ts';
import { inferNominal } from './nominal/inferNominal.ts';
import type { ToldNominal } from './nominal/mainsNominals.ts';
import type { DecisionRule } from './rule/decide.ts';
import { classifyWave, SINE_THD_PERCENT } from './waveform/classifyWave.ts';

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
  const { wave, waveform, meter, scaleSource, calibrated } = measured(capture, channel, instrument, options);
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
        }
      : {
          current: {
            ...currentFigures(channel.name, figures),
            ...keyedByUnit<Partial<CurrentFigures>>(sections, 'A'),
          },
        }),
    waveform,
    claims: claims.map((claim) => judgeClaim(claim, { figures, waveform, rule, sineThdPercent })),
    // Limits are for alternating voltages: DC, noise and raw switching have nothing to hold against them.
    findings:
      isVoltage && waveform.kind !== 'not classified'
        ? findings(figures, waveform, nominal, rule, more.groups)
        : [],
    ...(meter === null ? {} : { meter }),
    notices: [...given, ...inferred.notices, ...withoutDoubles(figures.notices, more.notices)],
  };
  return {
    result,
    trace: traceOf(wave, isVoltage ? 'V' : 'A'),
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

/** The digitiser check says of clipping and range what the first look says too, and says it better. */
const SAID_BETTER: Readonly<Record<string, string>> = {
  'wave.clipped': 'digitiser.clipped',
  'resolution.coarse': 'digitiser.range',
};

function withoutDoubles(doubts: readonly Notice[], checks: readonly Notice[]): readonly Notice[] {
  const said = new Set(checks.map(({ code }) => code));
  return [...doubts.filter(({ code }) => !said.has(SAID_BETTER[code] ?? '')), ...checks];
}

interface Measured {
  readonly wave: MeasuredWave;
  readonly waveform: Waveform;
  readonly meter: MeterComparison | null;
  readonly scaleSource: ScaleSource;
  readonly calibrated: Channel;
}

/** Measure a channel, and once more with its gain tied to the meter where the meter's reading is credible. */
function measured(
  capture: Capture,
  channel: Channel,
  instrument: Instrument,
  options: AssayOptions,
): Measured {
  const { orders = 50, sineThdPercent = SINE_THD_PERCENT } = options;
  const measure = (of: Channel, scaleSource: ScaleSource): MeasuredWave =>
    measureWave(
      {
        samples: of.samples,
        intervalS: capture.intervalS,
        startS: capture.startS,
        stepSize: of.stepSize,
        acCoupled: of.coupling === 'AC',
      },
      { orders, instrument, scaleSource },
    );
  const wave = measure(channel, 'scope and probe');
  const waveform = classifyWave(wave, sineThdPercent);
  const asFiled = { wave, waveform, scaleSource: 'scope and probe' as const, calibrated: channel };
  if (options.meter === undefined) return { ...asFiled, meter: null };
  const meter = compareMeter({ ...options.meter, figures: wave.figures, waveform });
  if (meter.answer !== 'calibrated') return { ...asFiled, meter };
  const { factor } = meter;
  const calibrated = {
    ...channel,
    scale: channel.scale * factor,
    samples: channel.samples.map((x) => x * factor),
    stepSize: channel.stepSize === null ? null : channel.stepSize * factor,
  };
  // Edges hold harmonics that a meter may not follow: its accuracy there is anybody's guess.
  const follows = waveform.levels === 0 || instrument.meterBandwidthHz !== null;
  const scaleSource = follows ? 'meter' : 'scope and probe';
  const again = measure(calibrated, scaleSource);
  return { wave: again, waveform: classifyWave(again, sineThdPercent), meter, scaleSource, calibrated };
}
