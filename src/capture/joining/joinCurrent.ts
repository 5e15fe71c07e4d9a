import type { Capture } from '../capture.ts';
import { channelNamed } from '../channels/channelNamed.ts';
import { joinChannel } from './joinChannel.ts';

/**
 * A capture with the current channel of another export of the same record.
 *
 * @param name - of the channel in the other capture; null: its first current, else its first channel.
 * @returns the joined capture, and the name that the channel bears in it.
 * @throws MeasureError `channel.unknown`, `channels.disagree`.
 */
export function joinCurrent(
  capture: Capture,
  other: Capture,
  name: string | null,
): { readonly capture: Capture; readonly current: string } {
  const channel =
    name !== null
      ? channelNamed(other, name)
      : (other.channels.find(({ quantity }) => quantity === 'current') ?? other.channels[0]);
  const joined = joinChannel(capture, other, channel);
  return { capture: joined, current: joined.channels.at(-1)!.name };
}
