import { MeasureError } from '../../base/measureError.ts';
import type { Capture, Channel } from '../capture.ts';
import { uniqueNames } from '../channels/uniqueNames.ts';

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
  if (differences.length > 0) {
    throw new MeasureError(
      'channels.disagree',
      `${channel.name} does not fit to the capture: ${differences.map(({ what }) => what).join(', ')} differ.`,
      {
        expected: differences.map(({ expected }) => expected).join(', '),
        received: differences.map(({ received }) => received).join(', '),
        advice: 'stop the scope once, then save both channels with the same settings',
      },
    );
  }
  const names = uniqueNames([...capture.channels, channel].map(({ name }, column) => ({ name, column })));
  const joined = { ...channel, name: names.at(-1)! };
  return { ...capture, channels: [...capture.channels, joined] };
}

interface Difference {
  readonly what: string;
  readonly expected: string;
  readonly received: string;
}

function timeBaseDifferences(capture: Capture, other: Capture): Difference[] {
  const { intervalS, startS, sampleCount } = capture;
  const differences: Difference[] = [];
  if (other.sampleCount !== sampleCount) {
    differences.push({
      what: 'the numbers of samples',
      expected: `${sampleCount} samples`,
      received: `${other.sampleCount} samples`,
    });
  }
  if (Math.abs(other.startS - startS) > TOLERANCE_INTERVALS * intervalS) {
    differences.push({
      what: 'the start times',
      expected: `start at ${seconds(startS)}`,
      received: `start at ${seconds(other.startS)}`,
    });
  }
  // What a difference in interval adds up to by the last sample.
  if (Math.abs(other.intervalS - intervalS) * sampleCount > TOLERANCE_INTERVALS * intervalS) {
    differences.push({
      what: 'the sample intervals',
      expected: `a sample every ${seconds(intervalS)}`,
      received: `a sample every ${seconds(other.intervalS)}`,
    });
  }
  return differences;
}

function seconds(value: number): string {
  return `${Number(value.toPrecision(7))} s`;
}
