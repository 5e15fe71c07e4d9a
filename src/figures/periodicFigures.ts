import type { Figure } from '../base/figure.ts';
import { seriesAt } from '../signal/harmonicSeries.ts';
import { moments } from '../signal/moments.ts';
import { wholeCycleWeights } from '../signal/wholeCycleWeights.ts';
import { AC_COUPLED } from './aperiodicFigures.ts';
import { deviationFactor } from './deviationFactor.ts';
import { dwell } from './dwell.ts';
import { edges } from './edges.ts';
import { harmonicFigures } from './harmonicFigures.ts';
import type { PeriodicRecord } from './measuredWave.ts';
import { expand, rectangular } from './uncertainty/expand.ts';
import type { Instrument } from './uncertainty/instrument.ts';
import type { WaveFigures } from './waveFigures.ts';
import { wholeCycleMean } from './wholeCycleMean.ts';
import { zeroCrossings } from './zeroCrossings.ts';

/** A meter that takes the mean of |v| shows the RMS of a sine of that mean: π / (2√2). */
const AVERAGE_TO_RMS = Math.PI / (2 * Math.SQRT2);

/**
 * Every figure of a periodic wave with its uncertainty.
 *
 * @remarks Scale errors (gain, probe) move all voltages alike and no ratio; the time base moves frequency
 * alone; offset moves mean, peaks and what is made of them.
 */
export function periodicFigures(
  record: PeriodicRecord,
  instrument: Instrument,
): Omit<WaveFigures, 'notices'> {
  const { samples, intervalS, periodic, stepSize } = record;
  const { fit, cycle, levels, periodSamples } = periodic;
  const weights = wholeCycleWeights(samples.length, periodSamples);
  const cycles = samples.length / periodSamples;

  const seriesSquare =
    fit.mean ** 2 + fit.cosine.reduce((sum, c, k) => sum + (c * c + fit.sine[k]! ** 2) / 2, 0);
  const rms = Math.sqrt(
    Math.max(
      0,
      wholeCycleMean(samples, fit, weights, (v) => v * v, seriesSquare),
    ),
  );
  const mean = wholeCycleMean(samples, fit, weights, (v) => v, fit.mean);
  const acRms = Math.sqrt(Math.max(0, rms * rms - mean * mean));
  const rectified = meanOfRectified(record, weights, 0);
  const averageResponding = AVERAGE_TO_RMS * meanOfRectified(record, weights, mean);
  const { max, min } = moments(samples);
  const peak = cycle.reduce((high, v) => Math.max(high, v), -Infinity);
  const trough = cycle.reduce((low, v) => Math.min(low, v), Infinity);
  const crest = Math.max(peak, -trough) / rms;
  const edge = levels.length > 0 ? edges(samples, levels, cycles) : null;
  const harmonic = harmonicFigures(record, rms, instrument, edge);
  const { fundamental } = harmonic;

  const noiseOfMean = fit.residualDeviation / Math.sqrt(fit.count);
  const offset = Math.hypot(
    rectangular((instrument.offsetPercent / 100) * (max - min)),
    rectangular((stepSize ?? 0) / 2),
  );
  const scale = Math.hypot(rectangular(instrument.gainPercent), rectangular(instrument.probePercent)) / 100;
  // An edge is known to one sample interval; where it falls between two samples, so is the duty it bounds.
  const edgeTime = edge !== null && edge.riseSamples < 3 ? rectangular(0.5 / periodSamples) : 0;
  const edgeOfRms = edge === null ? 0 : (edgeTime * edge.squareStepsOfCycle) / (2 * rms);
  const readings = (value: number, ...own: number[]): Figure =>
    expand(value, scale * value, noiseOfMean, ...own);
  const offsetOfRms = (offset * mean) / rms;
  const cycleNoise = noiseOfMean * Math.sqrt(2 * fit.cosine.length + 1);
  const resting = dwell(samples, weights, levels);
  // Where the wave rests at zero, |v| is the size of the noise or of a rounded code instead.
  const restingNoise = resting * Math.hypot(periodic.noise, rectangular((stepSize ?? 0) / 2));
  const ofRms = Math.hypot(noiseOfMean, edgeOfRms, offsetOfRms) / rms;
  const frequencyHz = fit.omega / (2 * Math.PI * intervalS);

  return {
    spanS: [record.startS, record.startS + samples.length * intervalS],
    cyclesUsed: cycles,
    frequencyHz: expand(
      frequencyHz,
      fit.deviation.omega / (2 * Math.PI * intervalS),
      rectangular(instrument.timeBasePpm * 1e-6 * frequencyHz),
    ),
    rms: readings(rms, edgeOfRms, offsetOfRms),
    mean: record.acCoupled ? AC_COUPLED : readings(mean, offset),
    peak: readings(peak, offset, cycleNoise),
    trough: readings(trough, offset, cycleNoise),
    max: readings(max, offset, periodic.noise),
    min: readings(min, offset, periodic.noise),
    crestFactor: expand(crest, crest * ofRms, Math.hypot(offset, cycleNoise) / rms),
    formFactor: expand(
      rms / rectified,
      (rms / rectified) * ofRms,
      (Math.hypot(noiseOfMean, restingNoise) / rectified) * (rms / rectified),
    ),
    fundamental: readings(fundamental),
    ...harmonic.figures,
    thdOrders: fit.cosine.length,
    thdNoisePercent: expand(
      (100 * Math.sqrt(Math.max(0, acRms ** 2 - fundamental ** 2))) / fundamental,
      ...harmonic.percentComponents,
    ),
    bandwidthHz: { value: 0.5 / intervalS, uncertainty: 0 },
    deviationFactorPercent: expand(
      100 * deviationFactor(cycle, mean, acRms, 0),
      rectangular(instrument.distortionPercent),
      (100 * cycleNoise) / (Math.SQRT2 * acRms),
    ),
    dwellPercent: expand(100 * resting, 100 * edgeTime * Math.SQRT2),
    edgeSlope:
      edge === null
        ? {
            value: null,
            reason: levels.length > 0 ? 'no whole edge in the record' : 'a smooth wave has no edges',
          }
        : expand(
            edge.slope / (intervalS * 1e6),
            (edge.slope / (intervalS * 1e6)) * Math.hypot(scale, rectangular(0.5 / edge.riseSamples)),
          ),
    // Two noise deviations of the cycle, a hundredth of its height at the least.
    zeroCrossingsPerCycle: {
      value: zeroCrossings(cycle, Math.max(0.01 * (peak - trough), 2 * cycleNoise)),
      uncertainty: 0,
    },
    averageResponding: readings(averageResponding, edgeTime * (peak - trough)),
    acRms: readings(acRms, edgeOfRms),
  };
}

/** ⟨|v − reference|⟩ over whole cycles. */
function meanOfRectified(record: PeriodicRecord, weights: Float64Array, reference: number): number {
  const { fit } = record.periodic;
  // |series| has kinks at its zeros: 4096 points leave an error of 1e-7 of the peak.
  const points = 4096;
  let seriesMean = 0;
  for (let n = 0; n < points; n++) {
    seriesMean += Math.abs(seriesAt(fit, (2 * Math.PI * n) / points) - reference) / points;
  }
  return wholeCycleMean(record.samples, fit, weights, (v) => Math.abs(v - reference), seriesMean);
}
