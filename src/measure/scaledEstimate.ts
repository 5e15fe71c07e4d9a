import type { HarmonicFit } from '../signal/harmonicFit.ts';
import type { HarmonicSeries } from '../signal/harmonicSeries.ts';
import { scaledResidual } from '../signal/residual.ts';
import type { Unrest } from './doubt/unrest.ts';
import type { FoldedExtremes, FoldedTop } from './foldedExtremes.ts';
import type { PeriodicWave } from './measuredWave.ts';
import type { PeriodicQuantities } from './periodicQuantities.ts';
import type { WaveEstimate } from './waveEstimate.ts';

/**
 * An estimate on another gain, as when a meter has told the volts: what is in U goes by the factor, what is in U² by
 * its square, and times, phases, ratios and counts stay. Nothing is fitted anew.
 *
 * @param factor - > 0.
 * @param samples - those of the estimate times the factor.
 */
export function scaledEstimate(estimate: WaveEstimate, factor: number, samples: Float64Array): WaveEstimate {
  const stepSize = estimate.stepSize === null ? null : factor * estimate.stepSize;
  if (estimate.periodic === null) {
    const { count, ...inUnit } = estimate.moments;
    return { ...estimate, samples, stepSize, moments: { count, ...times(factor, inUnit) } };
  }
  const periodic = scaledWave(estimate.periodic, factor);
  return {
    ...estimate,
    samples,
    stepSize,
    periodic,
    quantities: scaledQuantities(estimate.quantities, factor),
  };
}

/** Every number of a record times a factor. */
function times<T extends Readonly<Record<keyof T, number>>>(factor: number, values: T): T {
  const entries = Object.entries<number>(values).map(([key, value]) => [key, factor * value]);
  return Object.fromEntries(entries) as T;
}

const list = (factor: number, values: Float64Array): Float64Array => values.map((x) => factor * x);

function scaledWave(wave: PeriodicWave, factor: number): PeriodicWave {
  const { extent, extremes, ripple, residualPower, levels, outliers } = wave;
  return {
    ...wave,
    extent: { count: extent.count, max: factor * extent.max, min: factor * extent.min },
    fit: scaledFit(wave.fit, factor),
    series: scaledSeries(wave.series, factor),
    cycle: list(factor, wave.cycle),
    levels: levels.map((level) => ({ ...level, value: factor * level.value })),
    outliers: outliers.map((outlier) => ({ ...outlier, value: factor * outlier.value })),
    extremes: extremes === null ? null : scaledExtremes(extremes, factor),
    residualPower:
      residualPower === null ? null : { ...residualPower, power: list(factor * factor, residualPower.power) },
    ripple: ripple === null ? null : { ...ripple, rms: factor * ripple.rms },
    noise: factor * wave.noise,
    unrest: scaledUnrest(wave.unrest, factor),
  };
}

function scaledSeries({ mean, cosine, sine }: HarmonicSeries, factor: number): HarmonicSeries {
  return { mean: factor * mean, cosine: list(factor, cosine), sine: list(factor, sine) };
}

function scaledFit(fit: HarmonicFit, factor: number): HarmonicFit {
  return {
    ...fit,
    ...scaledSeries(fit, factor),
    residual: scaledResidual(fit.residual, factor),
    residualSquare: factor * factor * fit.residualSquare,
    residualDeviation: factor * fit.residualDeviation,
    deviation: { omega: fit.deviation.omega, ...scaledSeries(fit.deviation, factor) },
  };
}

function scaledExtremes({ peak, trough, noise, jumps }: FoldedExtremes, factor: number): FoldedExtremes {
  const top = (of: FoldedTop): FoldedTop => times(factor, of);
  return { peak: top(peak), trough: top(trough), noise: factor * noise, jumps };
}

function scaledUnrest(unrest: Unrest, factor: number): Unrest {
  const { shape, astray } = unrest;
  const { length, along, gained, lost } = shape;
  const square = factor * factor;
  return {
    ...unrest,
    astray: square * astray,
    shape: { ...shape, ...times(factor, { length, along }), ...times(square, { gained, lost }) },
  };
}

function scaledQuantities(quantities: PeriodicQuantities, factor: number): PeriodicQuantities {
  const { dwellRatio, restRatio, averagedSamples, edge, ...inUnit } = quantities;
  return {
    ...times(factor, inUnit),
    ...{ dwellRatio, restRatio, averagedSamples },
    edge:
      edge === null
        ? null
        : {
            ...edge,
            slope: factor * edge.slope,
            stepsOfCycle: factor * edge.stepsOfCycle,
            squareStepsOfCycle: factor * factor * edge.squareStepsOfCycle,
          },
  };
}
