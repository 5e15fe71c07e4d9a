import { type Component, scatter } from './component.ts';

export interface ResidualPowerInput {
  /** Of what the fit leaves, in U. */
  readonly residualDeviation: number;
  readonly sampleCount: number;
  /** 1 / Σ w² of the whole-cycle weights. */
  readonly averagedSamples: number;
  /** V1, RMS, in U. */
  readonly fundamental: number;
}

/**
 * What noise does to q = √(RMS² − mean² − V1²) / V1, beyond what it does to the orders.
 *
 * RMS weighs whole cycles (w), V1 is fitted to all samples alike (1/N): their difference sees the noise e through
 * 2 Σ (w − 1/N)·s1·e, of deviation 2·σ·V1·√(Σ w² − 1/N). And the power of the noise itself scatters by σ²·√(2/N).
 * With d(q²) = 2q·dq.
 *
 * @param percent - 100 q.
 * @returns components in %.
 */
export function residualPower(
  percent: number,
  { residualDeviation, sampleCount, averagedSamples, fundamental }: ResidualPowerInput,
): readonly Component[] {
  const ratio = residualDeviation / fundamental;
  // Nothing is left under the noise itself.
  const q = Math.max(percent / 100, ratio / Math.sqrt(sampleCount), Number.MIN_VALUE);
  const apart = Math.sqrt(Math.max(0, 1 / averagedSamples - 1 / sampleCount));
  return [
    scatter('noise between the cycles of RMS and fundamental', (100 * ratio * apart) / q, '%'),
    scatter('power of the noise', (100 * ratio ** 2 * Math.sqrt(2 / sampleCount)) / (2 * q), '%'),
  ];
}
