import type { Capture, Channel } from '../../capture/capture.ts';
import type { WaveInput } from '../../figures/measuredWave.ts';

/** A channel as the figures room takes it. */
export function waveInput(
  { intervalS, startS }: Capture,
  { samples, stepSize, coupling }: Channel,
): WaveInput {
  return { samples, intervalS, startS, stepSize, acCoupled: coupling === 'AC' };
}
