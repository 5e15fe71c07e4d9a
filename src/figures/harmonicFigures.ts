import type { Figure } from '../base/figure.ts';
import type { Edges } from './edges.ts';
import type { PeriodicRecord } from './measuredWave.ts';
import { expand, rectangular } from './uncertainty/expand.ts';
import type { Instrument } from './uncertainty/instrument.ts';
import type { Harmonic } from './waveFigures.ts';

export interface HarmonicFigures {
  /** RMS of the fundamental, in U. */
  readonly fundamental: number;
  readonly figures: {
    readonly thdPercent: Figure;
    readonly thdOfRmsPercent: Figure;
    readonly harmonics: readonly Harmonic[];
  };
  /** Standard uncertainties of the THD, percent points. */
  readonly percentComponents: readonly number[];
}

/**
 * Harmonics 1 to K and the distortion made of them.
 *
 * THD = 100·√(Σ Vn², n = 2 … K) / V1; of RMS: over the RMS, taken in time, DC included
 *
 * @remarks Each order holds the truth plus noise, and noise adds in power: what the fit's own variance adds is
 * taken off the sum, where the sum stands clear of it. A sum that doesn't is reported as it is, an upper bound.
 * The orders listed are as fitted.
 */
export function harmonicFigures(
  record: PeriodicRecord,
  rms: number,
  instrument: Instrument,
  edge: Edges | null,
): HarmonicFigures {
  const { fit, phaseRad, noise, periodSamples } = record.periodic;
  const orders = fit.cosine.length;
  // The residual of a stepped wave is mostly its orders above K, which is no noise in those below.
  const noiseShare = fit.residualDeviation > 0 ? noise / fit.residualDeviation : 0;
  const harmonics: Harmonic[] = [];
  const fundamental = Math.hypot(fit.cosine[0]!, fit.sine[0]!) / Math.SQRT2;
  let power = 0;
  let noisePower = 0;
  let noiseSlope = 0;
  for (let k = 1; k <= orders; k++) {
    const [cosine, sine] = [fit.cosine[k - 1]!, fit.sine[k - 1]!];
    const orderRms = Math.hypot(cosine, sine) / Math.SQRT2;
    harmonics.push({
      order: k,
      rms: orderRms,
      percent: (100 * orderRms) / fundamental,
      phaseDeg: wrapDegrees(((Math.atan2(cosine, sine) - k * phaseRad) * 180) / Math.PI),
    });
    if (k === 1) continue;
    power += orderRms ** 2;
    const variance = (fit.deviation.cosine[k - 1]! ** 2 + fit.deviation.sine[k - 1]! ** 2) / 2;
    noisePower += variance * noiseShare ** 2;
    noiseSlope += orderRms ** 2 * (variance / 2);
  }
  // Under one and a half times the floor the sum is the floor's own chance: nothing is left to correct.
  const heard = power >= 1.5 * 1.5 * noisePower;
  const distortion = Math.sqrt(heard ? power - noisePower : power);
  const thdPercent = (100 * distortion) / fundamental;
  // d√Σ = Σ Vn·dVn / √Σ; near the floor the noise itself is the doubt.
  const noisePercent = (100 * Math.sqrt(noiseSlope / Math.max(power, noisePower, 1e-300))) / fundamental;
  const floorPercent = (100 * Math.sqrt(noisePower)) / fundamental / Math.sqrt(Math.max(1, orders - 1));
  // A sliver of height J and width δ of a cycle puts √2·J·δ into every order.
  const edgePercent =
    edge !== null && edge.riseSamples < 3
      ? (100 * Math.SQRT2 * edge.stepsOfCycle * rectangular(0.5 / periodSamples)) / fundamental
      : 0;
  const percentComponents = [
    rectangular(instrument.distortionPercent),
    noisePercent,
    floorPercent,
    edgePercent,
  ];
  return {
    fundamental,
    figures: {
      thdPercent: expand(thdPercent, ...percentComponents),
      thdOfRmsPercent: expand((100 * distortion) / rms, ...percentComponents),
      harmonics,
    },
    percentComponents,
  };
}

/** Into (−180, 180]. */
function wrapDegrees(degrees: number): number {
  const turned = degrees - 360 * Math.ceil((degrees - 180) / 360);
  return turned === 0 ? 0 : turned;
}
