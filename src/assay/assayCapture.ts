import { errorData, MeasureError } from '../base/measureError.ts';
import { type Capture, type Channel, gapsOf } from '../read/capture.ts';
import { rescaleCapture } from '../read/rescaleCapture.ts';
import { selectVoltageChannels } from '../read/selectChannel.ts';
import { strayValues } from '../signal/strayValues.ts';
import type { Assay } from './assay.ts';
import { assayChannel } from './assayChannel.ts';
import type { AssayOptions, CaptureSource } from './assayOptions.ts';
import type { AssayNotice } from './notices.ts';

/** A channel that was asked for among others and can't be measured; the error's place names it. */
interface UnmeasuredChannel {
  readonly channel: string;
  readonly error: MeasureError;
}

/**
 * The whole way from a capture to its results: one a measured channel.
 *
 * @param capture - not changed, unless `scalesInPlace` says so.
 * @param unmeasured - told each of several channels that can't be measured: the others still are, and the first of them
 * names it in a notice.
 * @returns at least one, in the order of the channels.
 * @throws MeasureError where a channel named isn't there, or none can be measured: the first one's then.
 */
export function assayCapture(
  capture: Capture,
  source: CaptureSource,
  options: AssayOptions = {},
  unmeasured: (channel: UnmeasuredChannel) => void = () => {},
): readonly Assay[] {
  const inPlace = options.scalesInPlace ?? false;
  const scaled = rescaleCapture(capture, {
    scales: options.scales ?? [],
    inverted: options.inverted ?? [],
    measured: options.voltage,
    inPlace,
  });
  const { sound, strays } = withoutStrayValues(scaled, inPlace);
  const { channels, notices } = selectVoltageChannels(sound, options.voltage);
  const given = [...sound.notices, ...strays, ...notices];
  if (channels.length === 1) return [assayChannel(sound, channels[0]!, source, given, options)];
  const assays: Assay[] = [];
  const failed: UnmeasuredChannel[] = [];
  for (const channel of channels) {
    try {
      assays.push(assayChannel(sound, channel, source, given, options));
    } catch (error) {
      if (!(error instanceof MeasureError)) throw error;
      const { problem, facts, place } = error;
      const named = new MeasureError(problem, facts, { ...place, channel: channel.name });
      failed.push({ channel: channel.name, error: named });
    }
  }
  const [first, ...others] = assays;
  for (const one of failed.slice(first === undefined ? 1 : 0)) unmeasured(one);
  if (first === undefined) throw failed[0]!.error;
  return failed.length === 0 ? assays : [naming(first, failed), ...others];
}

/** So that who reads the results alone knows of the channels that have none. */
function naming(assay: Assay, failed: readonly UnmeasuredChannel[]): Assay {
  const errors = failed.map(({ error }) => errorData(error));
  const notices = [...assay.result.notices, { code: 'channels.unmeasured', errors } as const];
  return { ...assay, result: { ...assay.result, notices } };
}

/**
 * A capture without the single values that only a damaged cell makes: they are missing then, and each channel that had
 * some gets a notice.
 *
 * @param inPlace - change the samples given, and make no second array.
 * @returns `sound` the capture itself where there are none.
 */
function withoutStrayValues(
  capture: Capture,
  inPlace: boolean,
): { readonly sound: Capture; readonly strays: readonly AssayNotice[] } {
  const strays: AssayNotice[] = [];
  const [first, ...others] = capture.channels.map((channel) => {
    const places = strayValues(channel.samples);
    if (places.length === 0) return channel;
    strays.push(strayNotice(capture, channel, places));
    const samples = inPlace ? channel.samples : channel.samples.slice();
    for (const n of places) samples[n] = Number.NaN;
    return { ...channel, samples, gaps: gapsOf(samples) };
  });
  return { sound: strays.length === 0 ? capture : { ...capture, channels: [first!, ...others] }, strays };
}

function strayNotice(
  { startS, intervalS }: Capture,
  channel: Channel,
  places: readonly number[],
): AssayNotice {
  const [first, ...more] = places;
  return {
    code: 'value.outlier',
    value: channel.samples[first!]!,
    atS: startS + first! * intervalS,
    more: more.length,
    leftOutOf: { name: channel.name, unit: channel.unit },
  };
}
