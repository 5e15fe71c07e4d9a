import type { Capture, Channel } from '../capture.ts';
import { channelNamed } from './channelNamed.ts';
import { differenceNames } from './differenceNames.ts';
import { isWithoutUnit } from './isWithoutUnit.ts';

/**
 * The channels that a bare ratio or inversion means: those measured, or that would be if they were in volts; both of a
 * difference.
 *
 * @param measured - as `selectVoltageChannels` takes it.
 * @throws MeasureError `channel.unknown`.
 */
export function measuredNames(capture: Capture, measured: string | undefined): string[] {
  const names = capture.channels.map((channel) => channel.name);
  if (measured === undefined || (measured.toLowerCase() === 'all' && !names.includes(measured))) {
    const candidates = measurableNames(capture);
    return measured === undefined ? candidates.slice(0, 1) : candidates;
  }
  const pair = names.includes(measured) ? null : differenceNames(measured, names);
  return (pair ?? [measured]).map((name) => channelNamed(capture, name).name);
}

/** Voltages; where there is none, currents; where there is neither, channels that a ratio makes voltages. */
function measurableNames(capture: Capture): string[] {
  const named = (isWanted: (channel: Channel) => boolean): string[] =>
    capture.channels.filter(isWanted).map((channel) => channel.name);
  const voltages = named((channel) => channel.quantity === 'voltage');
  const currents = named((channel) => channel.quantity === 'current');
  if (voltages.length > 0) return voltages;
  return currents.length > 0 ? currents : named(isWithoutUnit);
}
