import { cos, log2, sin } from '../base/elementary.ts';
import { foldedMean, foldedMedian } from '../signal/foldedMean.ts';
import type { HarmonicFit } from '../signal/harmonicFit.ts';
import { type HarmonicSeries, sampleCycle } from '../signal/harmonicSeries.ts';
import { phasors } from '../signal/phasors.ts';
import { middleRange } from '../signal/recordParts.ts';
import { residualPart } from '../signal/residual.ts';
import { isHeard } from './doubt/unrest.ts';

/** Points of the cycle that peaks, crossings and the deviation factor are read from. */
const CYCLE_POINTS = 1024;

/** Samples in the middle of the record that a cycle is folded from: 256 a point. */
const LONGEST_FOLD = 2 ** 18;

/**
 * The orders of a fit that stand above four of their own standard deviations.
 *
 * @param noiseRatio - shape K: noise around each order over that which the fit assumes.
 * @remarks Noise in fifty orders would lift the peak of their sum: a maximum of noise is never its mean.
 */
export function significantSeries(fit: HarmonicFit, noiseRatio: Float64Array): HarmonicSeries {
  const heard = (k: number): boolean => isHeard(fit, k, noiseRatio[k]!);
  return {
    mean: fit.mean,
    cosine: fit.cosine.map((c, k) => (heard(k) ? c : 0)),
    sine: fit.sine.map((s, k) => (heard(k) ? s : 0)),
  };
}

/**
 * One cycle of a smooth wave from a rising zero of the fundamental: the series, with the folded residual on
 * top where sharp features stand above the orders fitted.
 *
 * @param phaseRad - of the fundamental at the record's centre.
 * @returns shape CYCLE_POINTS, in the unit of the samples.
 */
export function smoothCycle(fit: HarmonicFit, series: HarmonicSeries, phaseRad: number): Float64Array {
  const cycle = sampleCycle(series, CYCLE_POINTS, -phaseRad);
  // Sixteen samples a bin keep its noise at a quarter; more bins than half the samples a period stay empty.
  const binCount = binsFor(Math.min(fit.count / 16, Math.PI / fit.omega));
  // Bins wider than half a period of the highest order would smear the residual instead of adding it.
  if (binCount < 2 * fit.cosine.length) return cycle;
  const { omega, residual } = fit;
  const { from, to, apart } = middleRange(residual.length, LONGEST_FOLD);
  const folded = foldedMean(residualPart(residual, from, to), omega, phaseRad + omega * apart, binCount);
  // The residual of a good fit folds to its own variance; twice that means a shape, not noise.
  if (folded.meanSquare < 2 * fit.residualDeviation ** 2) return cycle;
  return cycle.map((v, n) => v + folded.bins[Math.floor((n * binCount) / CYCLE_POINTS)]!);
}

/**
 * One cycle of a stepped wave from a rising zero of the fundamental: the folded record itself, since a series
 * overshoots at every edge.
 *
 * @returns shape CYCLE_POINTS, in the unit of the samples.
 */
export function steppedCycle(samples: Float64Array, fit: HarmonicFit, phaseRad: number): Float64Array {
  const binCount = binsFor(fit.count / 16);
  const { from, to, apart } = middleRange(samples.length, LONGEST_FOLD);
  const bins = foldedMedian(samples.subarray(from, to), fit.omega, phaseRad + fit.omega * apart, binCount);
  return Float64Array.from(
    { length: CYCLE_POINTS },
    (_, n) => bins[Math.floor((n * binCount) / CYCLE_POINTS)]!,
  );
}

/** The power of two at or below, from 16 to CYCLE_POINTS. */
function binsFor(wanted: number): number {
  return 2 ** Math.floor(log2(Math.max(16, Math.min(wanted, CYCLE_POINTS))));
}

/**
 * Deviation factor: the largest distance of a cycle from the sine of the same frequency and AC RMS, over
 * that sine's peak; the sine's phase is the one that makes the largest distance least.
 *
 * @param cycle - shape N, one cycle, evenly spaced. Not changed.
 * @param mean - of the cycle.
 * @param acRms - of the cycle, > 0, same unit.
 * @param phaseRad - of the cycle's fundamental: where the search starts.
 * @returns a ratio, ≥ 0; 0 for a sine.
 * @see NEMA MG 1, IEEE Std 115 (from memory).
 */
export function deviationFactor(cycle: Float64Array, mean: number, acRms: number, phaseRad: number): number {
  const peak = Math.SQRT2 * acRms;
  const { re, im, omega } = phasors(cycle.length, (2 * Math.PI) / cycle.length);
  const largest = (phase: number): number => {
    // The turns count from the middle of the cycle.
    const atCentre = phase + (omega * (cycle.length - 1)) / 2;
    const inPhase = peak * cos(atCentre);
    const ahead = peak * sin(atCentre);
    let worst = 0;
    for (let n = 0; n < cycle.length; n++) {
      const apart = Math.abs(cycle[n]! - mean - (inPhase * im[n]! + ahead * re[n]!));
      if (apart > worst) worst = apart;
    }
    return worst;
  };
  // The largest distance is a maximum of smooth functions: look around coarsely, then close in twice.
  let best = phaseRad;
  let least = largest(best);
  for (let reach = 0.5; reach > 1e-5; reach /= 8) {
    const centre = best;
    for (let i = -8; i <= 8; i++) {
      const phase = centre + (i * reach) / 8;
      const worst = largest(phase);
      if (worst < least) [best, least] = [phase, worst];
    }
  }
  return least / peak;
}

/**
 * Changes of sign in one cycle, with hysteresis so that noise and ringing at zero don't count.
 *
 * @param cycle - shape N, one cycle; its end joins its start. Not changed.
 * @param hysteresis - ≥ 0, in the unit of the cycle: how far past zero the wave must go.
 * @returns a whole number, even; 0 where the wave stays on one side.
 */
export function zeroCrossings(cycle: Float64Array, hysteresis: number): number {
  const side = (x: number): number => (x > hysteresis ? 1 : x < -hysteresis ? -1 : 0);
  const sides = Array.from(cycle, side).filter((s) => s !== 0);
  return sides.filter((s, i) => s !== sides.at(i - 1)).length;
}
