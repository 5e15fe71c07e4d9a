import type { Capture, Channel } from './capture.ts';
import { uniqueNames } from './channels/buildChannels.ts';
import type { ReadNotice } from './notices.ts';
import { readError, type TimeBaseDifference } from './readErrors.ts';
import { channelNamed } from './selectChannel.ts';

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

/** How far apart, in sample intervals, two exports of one record may stamp the same sample. */
const TOLERANCE_INTERVALS = 0.25;

/**
 * A capture with a channel of another export of the same record, as scopes that save one file a channel
 * leave them.
 *
 * @param capture - whose time base stays.
 * @param other - the capture that the channel stands in.
 * @returns the channel last, under its own name, or with a number behind it where that is taken.
 * @throws MeasureError `channels.disagree` where count, start or interval differ: what differs is named.
 * @remarks Two records of one length from two triggers can't be told from one: they must come from one stop.
 */
export function joinChannel(capture: Capture, other: Capture, channel: Channel): Capture {
  const differences = timeBaseDifferences(capture, other);
  if (differences.length > 0) throw readError('channels.disagree', { channel: channel.name, differences });
  const names = uniqueNames([...capture.channels, channel].map(({ name }, column) => ({ name, column })));
  const joined = { ...channel, name: names.at(-1)! };
  return { ...capture, channels: [...capture.channels, joined] };
}

function timeBaseDifferences(capture: Capture, other: Capture): TimeBaseDifference[] {
  const { intervalS, startS, sampleCount } = capture;
  const differ: readonly (readonly [TimeBaseDifference['of'], boolean])[] = [
    ['sampleCount', other.sampleCount !== sampleCount],
    ['startS', Math.abs(other.startS - startS) > TOLERANCE_INTERVALS * intervalS],
    // What a difference in interval adds up to by the last sample.
    ['intervalS', Math.abs(other.intervalS - intervalS) * sampleCount > TOLERANCE_INTERVALS * intervalS],
  ];
  return differ.filter(([, isSo]) => isSo).map(([of]) => ({ of, values: [capture[of], other[of]] }));
}

/**
 * A file and the channel meant in it, as `FILE:NAME` says, or a file alone.
 *
 * @returns channel null where none is named. The colon of a drive (`D:\evening\ch2.csv`) is part of the file.
 * @example fileAndChannel('ch2.csv:Clamp') // { file: 'ch2.csv', channel: 'Clamp' }
 */
export function fileAndChannel(text: string): { readonly file: string; readonly channel: string | null } {
  const at = text.lastIndexOf(':');
  const isDrive = at === 1 && /^[a-z]:[\\/]/i.test(text);
  const channel = text.slice(at + 1).trim();
  if (at <= 0 || isDrive || channel === '')
    return { file: at === text.length - 1 ? text.slice(0, at) : text, channel: null };
  return { file: text.slice(0, at), channel };
}

interface CurrentChannel {
  readonly channel: Channel;
  readonly notices: readonly ReadNotice[];
}

/**
 * A channel that the person says is the current: a clamp or shunt gives volts, and a scope that wasn't told
 * saves them as volts.
 *
 * @param isScaled - true where the person gave its ratio: amperes per unit, already applied.
 * @throws MeasureError `channel.unmeasurable` where its unit is neither volts, amperes nor none.
 */
export function asCurrent(channel: Channel, isScaled: boolean): CurrentChannel {
  if (channel.quantity === 'current') return { channel, notices: [] };
  const { name, unit } = channel;
  if (channel.quantity === 'other' && unit !== '' && unit !== 'counts') {
    throw readError('channel.unmeasurable.current', { channel: name, unit });
  }
  const notices: ReadNotice[] = isScaled ? [] : [{ code: 'current.scaleAssumed', channel: name, unit }];
  return { channel: { ...channel, quantity: 'current', unit: 'A' }, notices };
}
