import { log2 } from '../../base/elementary/log2.ts';
import type { Capture, Channel } from '../../capture/capture.ts';
import type { MeasuredWave } from '../../figures/measuredWave.ts';
import { extremes } from '../../signal/extremes.ts';
import type { CaptureSummary } from '../measureDocument.ts';

/** The capture as the result document tells of it; `measured` stands in for the channel of its name. */
export function captureSummary(capture: Capture, measured: Channel, wave: MeasuredWave): CaptureSummary {
  return {
    samples: capture.sampleCount,
    sampleRateHz: 1 / capture.intervalS,
    startS: capture.startS,
    durationS: capture.sampleCount * capture.intervalS,
    bits: measured.bits ?? bitsShown(wave),
    channels: capture.channels.map((channel) => {
      const { name, quantity, unit, scale } = channel.name === measured.name ? measured : channel;
      return { name, quantity, unit, scale };
    }),
    layout: capture.layout,
  };
}

/** Bits that tell apart as many levels as the record spans; null where it shows no levels. */
function bitsShown({ samples, stepSize }: MeasuredWave): number | null {
  if (stepSize === null) return null;
  const { max, min } = extremes(samples);
  return Math.max(1, Math.ceil(log2((max - min) / stepSize + 1)));
}
