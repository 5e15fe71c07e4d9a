import type { Figure } from '../base/figure.ts';
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
import type { AssayNotice } from './notices.ts';

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
): AssayNotice {
  const at = (sample: number): number => Number((startS + sample * intervalS).toPrecision(5));
  const why =
    course?.steady.byCurrent === true
      ? 'The load’s current steps or drifts: the figures describe the longest stretch on which voltage and current are steady'
      : 'The voltage steps, breaks off or drifts: the figures describe its longest steady stretch';
  return { code: 'span.steady', message: `${why}, ${at(from)} s to ${at(to)} s.` };
}

/** Says where the wave goes on at another phase, which is neither a load step nor a break. */
export function jumpNotices(course: SupplyCourse | null): readonly AssayNotice[] {
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
