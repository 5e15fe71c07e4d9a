import type { Capture, Channel, SampleRange } from '../../capture/capture.ts';
import type { WaveInput } from '../../figures/measuredWave.ts';

/** A channel as the figures room takes it. @param stretch - of it, in samples; absent: all of it. */
export function waveInput(
  { intervalS, intervalWithin, startS }: Capture,
  { samples, stepSize, coupling, quantity }: Channel,
  stretch?: SampleRange,
): WaveInput {
  return {
    samples: stretch === undefined ? samples : samples.subarray(stretch.from, stretch.to),
    intervalS,
    ...(intervalWithin === undefined ? {} : { intervalWithin }),
    startS: startS + (stretch?.from ?? 0) * intervalS,
    stepSize,
    acCoupled: coupling === 'AC',
    isSupply: quantity === 'voltage',
  };
}
