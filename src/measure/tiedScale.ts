import { hypot } from '../base/elementary.ts';
import type { Channel, SampleRange } from '../read/capture.ts';
import { moments } from '../signal/statistics.ts';
import type { ScaleSource } from './doubt/component.ts';
import type { Instrument } from './doubt/instrument.ts';
import { type MeterAnswer, meterAnswer } from './meterAnswer.ts';
import { differenceComponents } from './power/differenceComponents.ts';
import { TOLD_SKEW_DOUBT_S } from './power/measurePower.ts';
import { scaledEstimate } from './scaledEstimate.ts';
import { alternates, type WaveEstimate, type WaveValues, waveValues } from './waveEstimate.ts';

/** An estimate on the scale that it is told on, and what that is tied to. */
interface TiedScale {
  readonly estimate: WaveEstimate;
  /** On the same scale. */
  readonly channel: Channel;
  readonly scaleSource: ScaleSource;
  /** Null where no meter was read. */
  readonly meter: MeterAnswer | null;
}

/**
 * The scale of a channel's volts: that of the file, or that of a meter where its reading is credible. Values go by the
 * gain; nothing is measured again.
 *
 * @param estimate - of a stretch of the channel's samples.
 * @throws MeasureError `meter.reading`, `meter.incomparable`.
 */
export function tieScale(
  estimate: WaveEstimate,
  channel: Channel,
  instrument: Instrument,
  read: { readonly readingV: number; readonly dcCoupled: boolean } | undefined,
): TiedScale {
  const values = waveValues(estimate);
  const own = filedScale(values, channel, instrument);
  const asFiled = { estimate, channel, scaleSource: own };
  if (read === undefined) return { ...asFiled, meter: null };
  const meter = meterAnswer({ ...read, values });
  if (meter.answer !== 'calibrated') return { ...asFiled, meter };
  // Edges hold harmonics that a meter may not follow: its accuracy there is anybody's guess.
  const hasEdges = alternates(values) && (estimate.periodic?.levels.length ?? 0) > 0;
  const scaleSource = hasEdges && instrument.meterBandwidthHz === null ? own : 'meter';
  const { factor } = meter;
  const tied = {
    ...channel,
    scale: channel.scale * factor,
    samples: channel.samples.map((x) => x * factor),
    stepSize: channel.stepSize === null ? null : channel.stepSize * factor,
  };
  const { from, to } = rangeIn(channel.samples, estimate.samples);
  return {
    estimate: scaledEstimate(estimate, factor, tied.samples.subarray(from, to)),
    ...{ channel: tied, scaleSource, meter },
  };
}

/** Where a view of a channel's samples lies in them. */
function rangeIn(all: Float64Array, part: Float64Array): SampleRange {
  const from = (part.byteOffset - all.byteOffset) / all.BYTES_PER_ELEMENT;
  return { from, to: from + part.length };
}

/** Gain and probe; of the difference of two channels those of both. */
function filedScale({ rms, frequencyHz }: WaveValues, channel: Channel, instrument: Instrument): ScaleSource {
  if (channel.differenceOf === undefined || !rms.value) return 'scope and probe';
  const [plusRms, minusRms] = channel.differenceOf.map(({ samples }) => {
    const { mean, standardDeviation } = moments(samples);
    return hypot(mean, standardDeviation);
  }) as [number, number];
  const components = differenceComponents({
    ...{ plusRms, minusRms, differenceRms: rms.value, instrument },
    frequencyHz: frequencyHz.value ?? 0,
    skewDoubtS: TOLD_SKEW_DOUBT_S,
  });
  return { components, rms: rms.value };
}
