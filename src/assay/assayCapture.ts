import { MeasureError } from '../base/measureError.ts';
import type { Notice } from '../base/notice.ts';
import { type Capture, type Channel, gapsOf } from '../read/capture.ts';
import { rescaleCapture } from '../read/rescaleCapture.ts';
import { selectVoltageChannels } from '../read/selectChannel.ts';
import { strayValues } from '../signal/strayValues.ts';
import type { Assay } from './assay.ts';
import { assayChannel } from './assayChannel.ts';
import type { AssayOptions, CaptureSource } from './assayOptions.ts';

/** A channel that was asked for among others and can't be measured; the message names it. */
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
  const sound = withoutStrayValues(scaled, inPlace);
  const { channels, notices } = selectVoltageChannels(sound, options.voltage);
  const given = [...sound.notices, ...notices];
  if (channels.length === 1) return [assayChannel(sound, channels[0]!, source, given, options)];
  const assays: Assay[] = [];
  const failed: UnmeasuredChannel[] = [];
  for (const channel of channels) {
    try {
      assays.push(assayChannel(sound, channel, source, given, options));
    } catch (error) {
      if (!(error instanceof MeasureError)) throw error;
      const { code, message, detail } = error;
      const isNamed = message.startsWith(`${channel.name} `);
      const named = new MeasureError(code, isNamed ? message : `${channel.name}: ${message}`, detail);
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
  const message = `Not measured: ${failed.map(({ error }) => error.message.replace(/\.$/, '')).join('; ')}.`;
  const notices = [...assay.result.notices, { code: 'channels.unmeasured', message }];
  return { ...assay, result: { ...assay.result, notices } };
}

/**
 * A capture without the single values that only a damaged cell makes: they are missing then, and each channel that had
 * some gets a notice.
 *
 * @param inPlace - change the samples given, and make no second array.
 * @returns the capture itself where there are none.
 */
function withoutStrayValues(capture: Capture, inPlace: boolean): Capture {
  const notices: Notice[] = [];
  const [first, ...others] = capture.channels.map((channel) => {
    const places = strayValues(channel.samples);
    if (places.length === 0) return channel;
    notices.push(strayNotice(capture, channel, places));
    const samples = inPlace ? channel.samples : channel.samples.slice();
    for (const n of places) samples[n] = Number.NaN;
    return { ...channel, samples, gaps: gapsOf(samples) };
  });
  if (notices.length === 0) return capture;
  return { ...capture, channels: [first!, ...others], notices: [...capture.notices, ...notices] };
}

function strayNotice({ startS, intervalS }: Capture, channel: Channel, places: readonly number[]): Notice {
  const [first, ...more] = places;
  // A channel may have no unit.
  const value = `${Number(channel.samples[first!]!.toPrecision(4))} ${channel.unit}`.trimEnd();
  const atS = Number((startS + first! * intervalS).toPrecision(6));
  const [others, are] = more.length === 0 ? ['', 'is'] : [`, and ${more.length} more like it,`, 'are'];
  return {
    code: 'value.outlier',
    message: `${channel.name}: a single value of ${value} at ${atS} s${others} ${are} far beyond all others and left out: look whether the file is damaged there.`,
  };
}
