import { MeasureError } from '../../base/measureError.ts';
import type { Capture, Channel } from '../capture.ts';

/**
 * The channel of a name: exact, else the only one that differs in case alone.
 *
 * @throws MeasureError `channel.unknown`, naming those that exist.
 */
export function channelNamed(capture: Capture, name: string): Channel {
  const wanted = name.trim();
  const exact = capture.channels.find((channel) => channel.name === wanted);
  if (exact !== undefined) return exact;
  const alike = capture.channels.filter((channel) => channel.name.toLowerCase() === wanted.toLowerCase());
  if (alike.length === 1) return alike[0]!;
  const names = capture.channels.map((channel) => channel.name).join(', ');
  throw new MeasureError('channel.unknown', `The capture has no channel "${wanted}".`, {
    expected: `one of ${names}`,
    received: wanted,
    advice: `name one of its channels: ${names}`,
  });
}
