import type { Figure } from '../base/figure.ts';
import type { Notice } from '../base/notice.ts';
import type { Nominal } from '../judge/nominal/mainsNominals.ts';
import type { ScaleSource } from '../measure/doubt/component.ts';
import type { Instrument } from '../measure/doubt/instrument.ts';
import { excursions, withEnds } from '../measure/envelope.ts';
import {
  SEARCHED_LOAD_W,
  type SupplyCourse,
  supplyTimeline,
  withoutJumps,
} from '../measure/steps/supplyTimeline.ts';
import type { Capture, Channel, SampleRange } from '../read/capture.ts';
import { MINIMUM_CYCLES } from '../signal/findFundamental.ts';
import { median } from '../signal/statistics.ts';

/** How a voltage goes along its record; null where nothing repeats. */
export function courseOf(capture: Capture, voltage: Channel, current: Channel | null): SupplyCourse | null {
  return supplyTimeline(record(capture, voltage), { current: current?.samples ?? null });
}

interface CourseKnowledge {
  readonly nominal: Nominal | null;
  readonly chain: { readonly instrument: Instrument; readonly scaleSource: ScaleSource };
  /** The load that words tell, W; null: not told. */
  readonly toldW: number | null;
}

/** The course again, now that nominal and scale are known: percentages and uncertainties need them. */
export function courseWithNominal(
  course: SupplyCourse,
  capture: Capture,
  voltage: Channel,
  current: Channel | null,
  { nominal, chain, toldW }: CourseKnowledge,
): SupplyCourse {
  const isStill = course.steps.length + course.events.length + course.jumps.length === 0;
  const options = {
    ...{ current: current?.samples ?? null, nominal: nominal?.voltageV ?? null, chain },
    isLoaded: toldW !== null && toldW > SEARCHED_LOAD_W,
  };
  const again = isStill ? course : (supplyTimeline(record(capture, voltage), options) ?? course);
  if (nominal === null) return again;
  const { envelope } = again;
  const found = withoutJumps(excursions(envelope, nominal.voltageV), again.jumps, envelope);
  return { ...again, excursions: nominal.inferred ? withEnds(found, envelope, nominal.voltageV) : found };
}

/** Fewer cycles than this tell less than the whole record does, however restless. */
const LEAST_STEADY_CYCLES = 2;
/** Where the rest of the record is without voltage, as few as can be measured. */
const LEAST_LIT_CYCLES = MINIMUM_CYCLES;

/** The stretch that figures are measured on, where that is not the whole record. */
export function steadyStretch(course: SupplyCourse | null, { intervalS }: Capture): SampleRange | undefined {
  if (course === null || course.steady.whole || !isRestless(course)) return undefined;
  const { from, to } = course.steady;
  const cycles = (to - from) * intervalS * course.envelope.frequencyHz[0]!;
  const least = course.dark.length > 0 ? LEAST_LIT_CYCLES : LEAST_STEADY_CYCLES;
  return cycles < least ? undefined : { from, to };
}

/** Of their own size: from the first third of the record to the last, or to the middle, less is no drift. */
const DRIFT = { rms: 0.02, frequencyHz: 0.01, current: 0.05 } as const;

/** Of the frequency: a single cycle that is off by more jumps in phase, by a twentieth of a turn. */
const JUMP_RATIO = 0.05;

/** Something steps, breaks off or jumps in phase, or one third of the record differs from another for good. */
export function isRestless(course: SupplyCourse): boolean {
  const { steps, events, jumps, envelope, currentEnvelope, steady } = course;
  if (steps.length + events.length + jumps.length > 0) return true;
  const third = Math.floor(envelope.rms.length / 3);
  if (third < 1) return false;
  const usual = median(envelope.frequencyHz);
  if (!steady.whole && envelope.frequencyHz.some((hertz) => Math.abs(hertz / usual - 1) > JUMP_RATIO))
    return true;
  const drifts = (values: Float64Array, ratio: number): boolean => {
    const medians = [0, 1, 2].map((i) => median(values.subarray(i * third, (i + 1) * third)));
    return Math.max(...medians) - Math.min(...medians) > ratio * Math.min(...medians);
  };
  return (
    drifts(envelope.rms, DRIFT.rms) ||
    drifts(envelope.frequencyHz, DRIFT.frequencyHz) ||
    (steady.byCurrent && currentEnvelope !== null && drifts(currentEnvelope.rms, DRIFT.current))
  );
}

/** The fundamental in the middle of a course, radians a sample; undefined where there is none. */
export function roughOmega(course: SupplyCourse | null, { intervalS }: Capture): number | undefined {
  if (course === null) return undefined;
  const { frequencyHz } = course.envelope;
  return 2 * Math.PI * frequencyHz[frequencyHz.length >> 1]! * intervalS;
}

/**
 * The RMS that tells which outlet this is: that of the figures, but where they describe a brown-out alone, the one before it.
 *
 * @param gain - of the measured channel over the one that was followed.
 */
export function outletRms(
  acRms: Figure,
  [fromS, toS]: readonly [number, number],
  course: SupplyCourse | null,
  gain: number,
): Figure {
  for (const event of course?.events ?? []) {
    if (event.kind !== 'brown-out') continue;
    const { startS, endS, before } = event;
    const isOver = endS.value !== null && toS > endS.value + endS.uncertainty;
    if (fromS >= startS.value - startS.uncertainty && !isOver)
      return { value: gain * before.value, uncertainty: gain * before.uncertainty };
  }
  return acRms;
}

/** Says which stretch the figures describe, where that is not the whole record. */
export function steadyNotice(
  { from, to }: SampleRange,
  course: SupplyCourse | null,
  { startS, intervalS }: Capture,
): Notice {
  const at = (sample: number): number => Number((startS + sample * intervalS).toPrecision(5));
  const why =
    course?.steady.byCurrent === true
      ? 'The load’s current steps or drifts: the figures describe the longest stretch on which voltage and current are steady'
      : 'The voltage steps, breaks off or drifts: the figures describe its longest steady stretch';
  return { code: 'span.steady', message: `${why}, ${at(from)} s to ${at(to)} s.` };
}

/** Says where the wave goes on at another phase, which is neither a load step nor a break. */
export function jumpNotices(course: SupplyCourse | null): readonly Notice[] {
  return (course?.jumps ?? []).map(({ atS, degrees }) => ({
    code: 'phase.jump',
    message: `At ${Number(atS.value.toPrecision(3))} s the voltage goes on ${Math.abs(degrees.value).toFixed(0)}° ${degrees.value > 0 ? 'ahead of' : 'behind'} where it was, without a break: a jump of phase, no load step.`,
  }));
}

function record(
  { intervalS, startS }: Capture,
  { samples }: Channel,
): { samples: Float64Array; intervalS: number; startS: number } {
  return { samples, intervalS, startS };
}
