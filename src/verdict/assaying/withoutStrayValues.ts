import type { Notice } from '../../base/notice.ts';
import type { Capture, Channel } from '../../capture/capture.ts';
import { gapsOf } from '../../capture/channels/gapsOf.ts';
import { strayValues } from '../../signal/strayValues.ts';

/**
 * A capture without the single values that only a damaged cell makes: they are missing then, and each channel that had
 * some gets a notice.
 *
 * @param inPlace - change the samples given, and make no second array.
 * @returns the capture itself where there are none.
 */
export function withoutStrayValues(capture: Capture, inPlace: boolean): Capture {
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
