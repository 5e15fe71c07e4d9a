import { MeasureError } from '../base/measureError.ts';
import type { Capture } from '../capture/capture.ts';
import { rescaleCapture } from '../capture/rescaleCapture.ts';
import { selectVoltageChannels } from '../capture/selectChannel.ts';
import type { Assay } from './assay.ts';
import { assayChannel } from './assaying/assayChannel.ts';
import type { AssayOptions, CaptureSource } from './assaying/assayOptions.ts';
import { withoutStrayValues } from './assaying/withoutStrayValues.ts';

/** A channel that was asked for among others and can't be measured; the message names it. */
export interface UnmeasuredChannel {
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
