import type { Figure } from '../base/figure.ts';
import { claimedNominal, judgeClaim } from '../judge/claims/judgeClaim.ts';
import { findings } from '../judge/limits/findings.ts';
import { directDoubt, type InferredNominal, inferNominal } from '../judge/nominal/inferNominal.ts';
import { isFrequencyOf, type ToldNominal } from '../judge/nominal/mainsNominals.ts';
import { isAlternating, SINE_THD_PERCENT } from '../judge/waveform/classifyWave.ts';
import type { Waveform } from '../judge/waveform/waveform.ts';
import { ASSUMED_INSTRUMENT } from '../measure/doubt/instrument.ts';
import { eventsOf, SEARCHED_LOAD_W, type SupplyHappenings } from '../measure/steps/supplyTimeline.ts';
import type { Capture, Channel } from '../read/capture.ts';
import type { Assay } from './assay.ts';
import type { AssayOptions, CaptureSource } from './assayOptions.ts';
import { captureSummary, dedupeNotices, traceOf } from './captureSummary.ts';
import { budgetsOf, currentFigures, keyedByUnit, voltageFigures } from './channelFigures.ts';
import { courseWithNominal, followed, jumpNotices, outletRms, steadyNotice } from './course.ts';
import { currentOf } from './currentAndPower.ts';
import { loadOf, loadSeenOf } from './loadOf.ts';
import { loadInWords } from './loadSeen.ts';
import type { AssayResult, CurrentFigures, VoltageFigures } from './measureDocument.ts';
import { type Measured, measureSteady } from './measureSteady.ts';
import { methodLines } from './methodLines.ts';
import type { AssayNotice } from './notices.ts';
import {
  digitiserDocument,
  groupsDocument,
  highBandsDocument,
  type Spectra,
  type SpectraContext,
  spectra,
} from './spectra.ts';
import { briefResults, type CourseResults, courseResults } from './stepDocuments.ts';

/**
 * One channel's result: its course along the record, the figures of its steady stretch, its kind, what it is held
 * against, and what a current beside it says of the load.
 *
 * @param given - notices of the capture and of the choice of the channel.
 * @throws MeasureError where the wave can't be measured, or a channel named isn't there.
 */
export function assayChannel(
  capture: Capture,
  channel: Channel,
  source: CaptureSource,
  given: readonly AssayNotice[],
  options: AssayOptions,
): Assay {
  const { claims = [], rule = 'guarded', sineThdPercent = SINE_THD_PERCENT, orders = 50 } = options;
  const isVoltage = channel.quantity === 'voltage';
  const instrument = { ...ASSUMED_INSTRUMENT, ...options.instrument };
  const drawn = isVoltage ? currentOf(capture, channel, options) : { channel: null, notices: [] };
  const found = isVoltage ? followed(capture, channel, drawn.channel) : null;
  const { measured, stretch, supply } = measureSteady(capture, channel, instrument, found, options);
  const { wave, meter, scaleSource, calibrated } = measured;
  const cutOff = cutOffReason(channel);
  const waveform = cutOff === null ? measured.waveform : notClassified(measured.waveform, cutOff);
  const { figures } = wave;

  const told = { ...claimedNominal(claims), ...options.nominal };
  // A direct rail and noise are no outlet: nothing is inferred of them, and nothing advised.
  const isAlternate = isAlternating(wave);
  const chain = { instrument, scaleSource };
  const toldW = loadInWords({ told: options.load, file: source.file })?.watts ?? null;
  const isLoaded = toldW !== null && toldW > SEARCHED_LOAD_W;
  const happened = supply === null ? NOTHING : eventsOf(supply, chain, isLoaded);
  const outletAcRms = outletRms(figures.acRms, figures.spanS, happened.events);
  const isOutlet = isVoltage && isAlternate && !isSignal(measured.waveform, figures.frequencyHz);
  const outlet = outletOf(isOutlet, isVoltage, outletAcRms, figures.frequencyHz, told);
  const { nominal, notices: nominalNotices } = outlet;
  const isScaleDoubted = nominalNotices.some(({ code }) => code.startsWith('scale.'));
  // Of DC and noise it is said that they are.
  const isWave = isVoltage && measured.waveform.kind !== 'not classified';
  const directNotices = isWave ? directDoubt(figures.mean, figures.acRms) : [];
  const more = spectra(capture, calibrated, wave, nominal);
  const load = loadOf(
    { capture, voltage: channel, current: drawn.channel, wave, stretch, instrument, scaleSource },
    options,
  );
  const judged = supply === null ? null : courseWithNominal(supply, happened, nominal, chain);
  // A pulse train or a burst is no supply: what changes along it is its own.
  const course =
    wave.aperiodic === 'brief'
      ? // What a load draws in under 1.3 cycles can't be told; where a current was captured, what words tell doesn't count.
        briefResults({
          ...{ capture, voltage: calibrated, chain, isScaleDoubted },
          toldW: drawn.channel === null ? toldW : null,
        })
      : judged === null || measured.waveform.kind === 'not classified'
        ? NO_COURSE
        : courseResults({
            course: judged,
            ...{ capture, voltage: calibrated, nominal, instrument, orders },
            isResistiveFullStep: options.isResistiveFullStep ?? false,
            ...{ toldW, isScaleDoubted },
          });
  const { dynamics, ...courseSections } = course;
  const under = loadSeenOf({
    ...{ voltage: calibrated, current: drawn.channel, supply, steps: judged?.steps ?? [], stretch },
    intervalS: capture.intervalS,
    spanS: figures.spanS,
    result: { ...courseSections, ...load.sections },
    ...{ told: options.load, file: source.file },
    isScaleDoubted,
  });
  // A longer break is no transfer any more, and no shorter one for that.
  const transfersS = course.events.flatMap((event) =>
    event.kind === 'transfer' || event.kind === 'outage' ? [event.durationS] : [],
  );
  const budgets = budgetsOf(figures, isVoltage ? 'V' : 'A');
  const context = { wave, ...chain, perWindow: options.perWindow ?? false };
  return {
    result: {
      ...source,
      ...(options.label === undefined ? {} : { label: options.label }),
      ...(options.load === undefined ? {} : { load: options.load }),
      ...under.section,
      capture: { ...captureSummary(capture, calibrated, wave), digitiser: digitiserDocument(more.digitiser) },
      nominal,
      ...channelSection(channel, measured, more, context),
      ...load.sections,
      waveform,
      claims: claims.map((claim) =>
        judgeClaim(claim, {
          ...{ figures, waveform, rule, sineThdPercent, transfersS },
          ...(cutOff === null ? {} : { cutOff }),
        }),
      ),
      ...courseSections,
      // Limits are for whole alternating voltages on a scale that is right: DC, noise and millivolts have nothing to hold.
      findings:
        isWave && cutOff === null && !isScaleDoubted
          ? findings(figures, waveform, nominal, rule, more.groups, outlet.others).filter(
              // With a zero that is doubted the volts are too; ratios and hertz are not.
              ({ quantity }) => directNotices.length === 0 || !quantity.endsWith('(V)'),
            )
          : [],
      ...(meter === null ? {} : { meter }),
      notices: [
        ...given,
        ...(stretch === undefined ? [] : [steadyNotice(stretch, supply, capture)]),
        ...jumpNotices(happened.jumps),
        // Volts that were cut off are too few whatever the outlet is for.
        ...nominalNotices.filter(({ code }) => cutOff === null || !/^nominal\.(off|other)$/.test(code)),
        ...directNotices,
        ...dedupeNotices(figures.notices, more.notices, channel.overRange !== undefined).filter(
          ({ code }) => isAlternate || !OF_WAVES.test(code),
        ),
        ...drawn.notices,
        ...load.notices,
        ...under.notices,
      ],
    },
    trace: traceOf(wave, isVoltage ? 'V' : 'A'),
    dynamics,
    budgets,
    method: methodLines({
      wave,
      ...chain,
      told: options.instrument ?? {},
      rule,
      sineThdPercent,
      scale: calibrated.scale,
      budgets,
    }),
  };
}

/** Doubts that advise on how to see a mains wave better. */
const OF_WAVES = /^(cycles|rate|frequency|wave\.drifts)\b/;

/** Pulses or impulses far from the frequencies of mains: of them is not said that an outlet's time axis looks wrong. */
function isSignal({ kind, levels }: Waveform, { value: hertz }: Figure): boolean {
  return (
    kind === 'not classified' &&
    levels > 1 &&
    (hertz === null || ![50, 60].some((mains) => isFrequencyOf(hertz, mains)))
  );
}

function outletOf(
  isOutlet: boolean,
  isVoltage: boolean,
  acRms: Figure,
  frequencyHz: Figure,
  told: ToldNominal,
): InferredNominal {
  if (isOutlet) return inferNominal(acRms, frequencyHz, told);
  const { voltageV, frequencyHz: hertz } = told;
  const isTold = isVoltage && voltageV !== undefined && hertz !== undefined;
  return {
    nominal: isTold ? { voltageV, frequencyHz: hertz, inferred: false } : null,
    ...{ others: [], notices: [] },
  };
}

/** Of the samples: a sine cut off for less of its cycle loses a ten-thousandth of its top, 1 − cos(π/200). */
const HARDLY_CUT = 0.01;

/** Why neither kind nor volts nor distortion can be told of a wave that the scope cut off; null where it did not. */
function cutOffReason(channel: Channel): string | null {
  const parts = [channel, ...(channel.differenceOf ?? [])];
  const share = Math.max(
    ...parts.map(({ overRange, samples }) => (overRange?.sampleCount ?? 0) / samples.length),
  );
  if (share <= HARDLY_CUT) return null;
  return `the scope cut it off, ${Math.round(100 * share)} % of its samples lie beyond the range: set more volts per division and save again`;
}

function notClassified({ levels }: Waveform, reason: string): Waveform {
  return { kind: 'not classified', reasons: [reason], levels, atTheEdge: false };
}

const NOTHING: SupplyHappenings = { events: [], jumps: [] };

const NO_COURSE: CourseResults = { steps: [], events: [], excursions: [], dynamics: null };

/** The channel's figures and spectra, under the key of its quantity. */
function channelSection(
  { name, quantity }: Channel,
  { wave }: Measured,
  { groups, high }: Spectra,
  context: SpectraContext,
): Pick<AssayResult, 'voltage'> | Pick<AssayResult, 'current'> {
  const sections = {
    ...(groups === null ? {} : { harmonicGroups: groupsDocument(groups, context) }),
    ...(high === null ? {} : { highBands: highBandsDocument(high, context) }),
  };
  return quantity === 'voltage'
    ? {
        voltage: {
          ...voltageFigures(name, wave.figures),
          ...keyedByUnit<Partial<VoltageFigures>>(sections, 'V'),
        },
      }
    : {
        current: {
          ...currentFigures(name, wave.figures),
          ...keyedByUnit<Partial<CurrentFigures>>(sections, 'A'),
        },
      };
}
