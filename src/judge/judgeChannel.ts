import type { Figure } from '../base/figure.ts';
import type { SupplyEvent } from '../measure/breaks/supplyEvent.ts';
import { withEnds } from '../measure/envelope.ts';
import type { MeasuredChannel } from '../measure/measureChannel.ts';
import { againstNominal, type SupplyCourse } from '../measure/steps/supplyTimeline.ts';
import type { Channel } from '../read/capture.ts';
import type { Claim, ClaimResult } from './claims/claim.ts';
import { claimedNominal, judgeClaim } from './claims/judgeClaim.ts';
import { compareMeter, type MeterComparison } from './compareMeter.ts';
import type { DecisionRule } from './decide.ts';
import { type Finding, findings } from './limits/findings.ts';
import { type LoadKind, loadKind } from './loadKind.ts';
import { directDoubt, type InferredNominal, inferNominal } from './nominal/inferNominal.ts';
import { isFrequencyOf, type Nominal, type ToldNominal } from './nominal/mainsNominals.ts';
import type { JudgeNotice } from './notices.ts';
import type { JudgeReason } from './reasons.ts';
import { classifyWave, isAlternating } from './waveform/classifyWave.ts';
import type { Waveform } from './waveform/waveform.ts';

/** What a channel is to be held against. */
interface ChannelStandard {
  readonly claims: readonly Claim[];
  /** As told; what it leaves open the claims tell. */
  readonly nominal: ToldNominal | undefined;
  readonly rule: DecisionRule;
  readonly sineThdPercent: number;
}

/** What the measured figures of a channel mean. */
export interface JudgedChannel {
  readonly waveform: Waveform;
  readonly meter: MeterComparison | null;
  /** Of a current with a wave of its own; null otherwise. */
  readonly loadKind: LoadKind | null;
  readonly nominal: Nominal | null;
  /** True where the volts themselves are doubted. */
  readonly isScaleDoubted: boolean;
  /** The course against nominal; null where the wave is no supply's. */
  readonly course: SupplyCourse | null;
  /** What happens to the voltage, of a supply. */
  readonly events: readonly SupplyEvent[];
  readonly claims: readonly ClaimResult[];
  readonly findings: readonly Finding[];
  /** Doubts about the nominal voltage and the zero. */
  readonly notices: InferredNominal['notices'];
  /** True for a wave that an outlet's limits and advice are for: neither a direct voltage nor noise. */
  readonly isAlternating: boolean;
}

/** Kind of wave, nominal voltage, and how the figures stand against what was claimed and what tables allow. */
export function judgeChannel(measured: MeasuredChannel, standard: ChannelStandard): JudgedChannel {
  const { channel, wave, load, happened, spectra } = measured;
  const { claims, rule, sineThdPercent } = standard;
  const { figures } = wave;
  const seen = classifyWave(wave, sineThdPercent);
  const tooLittle = cutOffReason(channel) ?? pieceReason(measured);
  const waveform = tooLittle === null ? seen : notClassified(seen, tooLittle);
  const outlet = outletOf(measured, seen, standard);
  const { nominal } = outlet;
  const isScaleDoubted = outlet.notices.some(({ code }) => OF_SCALE.has(code));
  // Of DC and noise it is said that they are.
  const isWave = channel.quantity === 'voltage' && seen.kind !== 'not classified';
  const directNotices = isWave ? directDoubt(figures.mean, figures.acRms) : [];
  // A pulse train or a burst is no supply: what changes along it is its own.
  const course = isWave ? courseOf(measured, nominal) : null;
  const events = wave.aperiodic === 'brief' ? happened.events : (course?.events ?? []);
  const noOutput = failedReason(events, figures.spanS);
  const evidence = {
    ...{ figures, waveform, rule, sineThdPercent, transfersS: transfers(events) },
    ...(noOutput === null ? {} : { noOutput }),
  };
  return {
    ...{ waveform, nominal, isScaleDoubted, course, events },
    meter: measured.meter === null ? null : compareMeter(measured.meter, seen),
    loadKind:
      load === null || load.wave === null
        ? null
        : loadKind({ power: load.power, voltage: figures, current: load.wave.figures }),
    claims: claims.map((claim) =>
      judgeClaim(claim, { ...evidence, ...(tooLittle === null ? {} : { tooLittle }) }),
    ),
    // Limits are for whole alternating voltages on a scale that is right: DC, noise and millivolts have nothing to hold.
    findings:
      isWave && tooLittle === null && !isScaleDoubted
        ? findings(figures, waveform, nominal, rule, spectra.groups, {
            ...{ others: outlet.others, zero: directNotices.length > 0 },
          })
        : [],
    notices: [
      // Volts that were cut off are too few whatever the outlet is for, and a piece says nothing of it.
      ...outlet.notices.filter(({ code }) => tooLittle === null || !OF_OUTLET.has(code)),
      ...directNotices,
    ],
    isAlternating: isAlternating(wave),
  };
}

/** Doubts of the volts themselves, and of the outlet that they are taken for. */
const OF_SCALE: ReadonlySet<JudgeNotice['code']> = new Set(['scale.half', 'scale.suspect'] as const);
const OF_OUTLET: ReadonlySet<JudgeNotice['code']> = new Set(['nominal.off', 'nominal.other'] as const);

/** The outlet that a voltage is of: a direct rail, noise and a signal are none, nothing is inferred of them. */
function outletOf(
  { channel, wave, happened }: MeasuredChannel,
  waveform: Waveform,
  { claims, nominal }: ChannelStandard,
): InferredNominal {
  const { figures } = wave;
  const told = { ...claimedNominal(claims), ...nominal };
  const isVoltage = channel.quantity === 'voltage';
  if (isVoltage && isAlternating(wave) && !isSignal(waveform, figures.frequencyHz)) {
    return inferNominal(outletRms(figures.acRms, figures.spanS, happened.events), figures.frequencyHz, told);
  }
  const { voltageV, frequencyHz } = told;
  const isTold = isVoltage && voltageV !== undefined && frequencyHz !== undefined;
  return {
    nominal: isTold ? { voltageV, frequencyHz, inferred: false } : null,
    ...{ others: [], notices: [] },
  };
}

/** Pulses or impulses far from the frequencies of mains: of them is not said that an outlet's time axis looks wrong. */
function isSignal({ kind, levels }: Waveform, { value: hertz }: Figure): boolean {
  return (
    kind === 'not classified' &&
    levels > 1 &&
    (hertz === null || ![50, 60].some((mains) => isFrequencyOf(hertz, mains)))
  );
}

/** The RMS that tells which outlet this is: that of the figures, but where they describe a brown-out alone, the one before it. */
function outletRms(
  acRms: Figure,
  [fromS, toS]: readonly [number, number],
  events: readonly SupplyEvent[],
): Figure {
  for (const event of events) {
    if (event.kind !== 'brown-out') continue;
    const { startS, endS, before } = event;
    const isOver = endS.value !== null && toS > endS.value + endS.uncertainty;
    if (fromS >= startS.value - startS.uncertainty && !isOver) return before;
  }
  return acRms;
}

/** The course against nominal: excursions of an inferred one count only where the voltage comes or goes. */
function courseOf(
  { supply, happened, chain }: MeasuredChannel,
  nominal: Nominal | null,
): SupplyCourse | null {
  if (supply === null) return null;
  const { steps, excursions } = againstNominal(supply, happened, nominal?.voltageV ?? null, chain);
  return {
    ...supply,
    ...happened,
    steps,
    excursions:
      nominal?.inferred === true ? withEnds(excursions, supply.envelope, nominal.voltageV) : excursions,
  };
}

/** A longer break is no transfer any more, and no shorter one for that. */
function transfers(events: readonly SupplyEvent[]): readonly { value: number; uncertainty: number }[] {
  return events.flatMap((event) => {
    if (event.kind !== 'transfer' && event.kind !== 'outage') return [];
    const { value, uncertainty } = event.durationS;
    return [{ value, uncertainty }];
  });
}

/** Of the samples: a sine cut off for less of its cycle loses a ten-thousandth of its top, 1 − cos(π/200). */
const HARDLY_CUT = 0.01;

/** Why neither kind nor volts nor distortion can be told of a wave that the scope cut off; null where it did not. */
function cutOffReason(channel: Channel): JudgeReason | null {
  const parts = [channel, ...(channel.differenceOf ?? [])];
  const share = Math.max(
    ...parts.map(({ overRange, samples }) => (overRange?.sampleCount ?? 0) / samples.length),
  );
  if (share <= HARDLY_CUT) return null;
  return { code: 'channel.cutOff', percent: 100 * share };
}

/** Cycles that a part of a record must hold to tell what wave the outlet gives: one alone is not seen to repeat. */
const LEAST_OF_A_WAVE = 2;

/** Why a piece between breaks, as of a failed start, tells no kind of wave; null where there is more of it. */
function pieceReason({ stretch, wave: { figures } }: MeasuredChannel): JudgeReason | null {
  const cycles = figures.cyclesUsed;
  if (stretch === undefined || cycles >= LEAST_OF_A_WAVE) return null;
  return { code: 'piece.short', cycles };
}

/** Why a start that failed bears no claim, where nothing else was measured; null where something was. */
function failedReason(
  events: readonly SupplyEvent[],
  [fromS, toS]: readonly [number, number],
): JudgeReason | null {
  const isOf = events.some(
    (event) =>
      event.kind === 'failed start' &&
      fromS >= event.startS.value - event.startS.uncertainty &&
      toS <= event.endS.value + event.endS.uncertainty,
  );
  return isOf ? { code: 'output.notStarted' } : null;
}

function notClassified({ levels }: Waveform, reason: JudgeReason): Waveform {
  return { kind: 'not classified', reasons: [reason], levels, atTheEdge: false };
}
