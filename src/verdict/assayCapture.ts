import type { Capture } from '../capture/capture.ts';
import { rescaleCapture } from '../capture/rescaleCapture.ts';
import { selectVoltageChannels } from '../capture/selectChannel.ts';
import type { Assay } from './assay.ts';
import { assayChannel } from './assaying/assayChannel.ts';
import type { AssayOptions, CaptureSource } from './assaying/assayOptions.ts';
import { withoutStrayValues } from './assaying/withoutStrayValues.ts';

/**
 * The whole way from a capture to its results: one a measured channel.
 *
 * @param capture - not changed, unless `scalesInPlace` says so.
 * @returns at least one, in the order of the channels.
 * @throws MeasureError where a channel named isn't there or the wave can't be measured.
 */
export function assayCapture(
  capture: Capture,
  source: CaptureSource,
  options: AssayOptions = {},
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
  return channels.map((channel) => assayChannel(sound, channel, source, given, options));
}
