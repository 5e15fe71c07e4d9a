import type { Capture, Channel, SampleRange } from '../read/capture.ts';
import { briefEvent, briefVoltage } from './breaks/briefVoltage.ts';
import type { Instrument } from './doubt/instrument.ts';
import { doubtWave } from './doubtWave.ts';
import type { MeasuringChain } from './envelope.ts';
import { estimateWave } from './estimateWave.ts';
import type { MeasuredWave } from './measuredWave.ts';
import type { MeterAnswer } from './meterAnswer.ts';
import { type MeasuredLoad, measureLoad } from './power/measureLoad.ts';
import { type Spectra, spectra } from './spectra.ts';
import { locateSteady } from './steadyWave.ts';
import { type FollowedSupply, followSupply } from './steps/followSupply.ts';
import { eventsOf, type SupplyHappenings, scaledSupply } from './steps/supplyTimeline.ts';
import { tieScale } from './tiedScale.ts';

/** What a measurement needs to be told. */
interface ChannelQuestion {
  readonly instrument: Instrument;
  /** Highest harmonic asked for. */
  readonly orders: number;
  /** What a meter showed; absent: none was read. */
  readonly meter?: { readonly readingV: number; readonly dcCoupled: boolean };
  /** The load's, beside a voltage; null: not recorded. */
  readonly current: Channel | null;
  /** How much later the current's chain shows an event than the voltage's, s; undefined: not told. */
  readonly skewS: number | undefined;
  /** Frequency that the outlet is told to have; null: not told. */
  readonly nominalFrequencyHz: number | null;
  /** True where a load of some size is known to be on. */
  readonly isLoaded: boolean;
}

/** All that is measured of one channel, before it is said what it means. */
export interface MeasuredChannel {
  readonly capture: Capture;
  /** On the scale that its volts are tied to. */
  readonly channel: Channel;
  readonly chain: MeasuringChain;
  /** Null where no meter was read. */
  readonly meter: MeterAnswer | null;
  /** What `wave` is measured on, in samples; undefined: the whole record. */
  readonly stretch: SampleRange | undefined;
  readonly wave: MeasuredWave;
  readonly spectra: Spectra;
  /** Null where no current was recorded, or nothing repeats. */
  readonly load: MeasuredLoad | null;
  /** How a voltage goes along its record; null where it isn't followed. */
  readonly supply: FollowedSupply | null;
  readonly happened: SupplyHappenings;
}

/**
 * A channel and what was recorded beside it, in three passes none of which looks back: where its wave is and what happens
 * along the record (detect); the fit and the values, on the scale that the file or a meter gives (estimate); the
 * uncertainty of each (doubt).
 *
 * @throws MeasureError where the wave can't be measured, or held against a meter.
 */
export function measureChannel(capture: Capture, filed: Channel, question: ChannelQuestion): MeasuredChannel {
  const { instrument, orders, current } = question;
  const located = locateSteady(capture, filed, followed(capture, filed, current));
  const { stretch } = located;

  const asFiled = estimateWave(located.input, located.located, { orders, bits: instrument.bits });
  const { estimate, channel, scaleSource, meter } = tieScale(asFiled, filed, instrument, question.meter);
  const gain = channel.scale / filed.scale;
  const supply =
    gain === 1 || located.course === null
      ? located.course
      : scaledSupply(located.course, gain, channel.samples);

  const chain = { instrument, scaleSource };
  const wave = ofStretch(doubtWave(estimate, chain), stretch !== undefined);
  const { nominalFrequencyHz, skewS } = question;
  return {
    ...{ capture, channel, chain, meter, stretch, wave, supply },
    spectra: spectra(capture, channel, wave, nominalFrequencyHz),
    load:
      current === null
        ? null
        : measureLoad({ capture, voltage: wave, current, chain, orders, stretch, skewS }),
    happened: happenings(capture, channel, wave, supply, chain, question.isLoaded),
  };
}

/** Of a stretch no time base gives more cycles: the record holds more, but not of that wave. */
function ofStretch(wave: MeasuredWave, isPart: boolean): MeasuredWave {
  if (!isPart) return wave;
  const notices = wave.figures.notices.map((notice) =>
    notice.code === 'cycles.few' ? { ...notice, isPart } : notice,
  );
  return { ...wave, figures: { ...wave.figures, notices } };
}

/** Where something happens to a voltage along its record; null where nothing repeats, and for a current. */
function followed(
  { intervalS, startS }: Capture,
  { quantity, samples }: Channel,
  current: Channel | null,
): FollowedSupply | null {
  if (quantity !== 'voltage') return null;
  return followSupply({ samples, intervalS, startS }, current?.samples ?? null);
}

/** Breaks, starts and jumps; of a voltage that is too brief to be followed its start or loss. */
function happenings(
  { intervalS, startS }: Capture,
  { samples }: Channel,
  { aperiodic }: MeasuredWave,
  supply: FollowedSupply | null,
  chain: MeasuringChain,
  isLoaded: boolean,
): SupplyHappenings {
  const along = supply === null ? { events: [], jumps: [] } : eventsOf(supply, chain, isLoaded);
  if (aperiodic !== 'brief') return along;
  const record = { samples, intervalS, startS };
  const brief = briefVoltage(record);
  return { jumps: along.jumps, events: brief === null ? [] : [briefEvent(record, brief, chain)] };
}
