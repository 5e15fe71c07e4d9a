import { hypot } from '../../base/elementary.ts';
import type { HarmonicSeries } from '../../signal/harmonicSeries.ts';
import { RUN_SAMPLES } from '../../signal/recordParts.ts';
import type { CycleWeights } from '../../signal/wholeCycleWeights.ts';
import type { PowerBasis } from './nonsinusoidalPower.ts';
import type { FittedChannel } from './powerFigures.ts';

/** Means over whole cycles of two channels, in their units and products of these. */
interface PowerMeans {
  readonly meanV: number;
  readonly meanA: number;
  /** Of v² and i²: squares of the RMS. */
  readonly squareV: number;
  readonly squareA: number;
  /** Of v·i: the active power. */
  readonly product: number;
}

/**
 * The means that the powers are made of, taken in time: each the exact mean of the series, or of the product of two
 * series, plus the weighted mean of what the samples add to it.
 *
 * ⟨a·b⟩ = a₀·b₀ + ½ Σ (aₖ·bₖ, cosines and sines) + Σ w·(a·b − series·series)
 *
 * All in one pass, so that each residual is worked out once. A sample missing in a channel adds nothing: the series
 * stands in for it.
 *
 * @param current - in step with the voltage: its product with it is taken.
 * @param late - the current as recorded, of which mean and square are taken. All three of shape N, fitted at one
 * frequency to as many orders.
 */
export function powerMeans(
  voltage: FittedChannel,
  current: FittedChannel,
  late: FittedChannel,
  weights: CycleWeights,
): PowerMeans {
  const room = (): Float64Array => new Float64Array(RUN_SAMPLES);
  const [ofVoltage, ofCurrent, ofLate, weight] = [room(), room(), room(), room()];
  const squares = { voltage: new Float64Array(2), late: new Float64Array(2) };
  let product = seriesProduct(voltage.fit, current.fit);
  for (let from = 0; from < weights.length; from += RUN_SAMPLES) {
    const to = Math.min(weights.length, from + RUN_SAMPLES);
    const run = ({ samples, fit }: FittedChannel, left: Float64Array): ChannelRun => ({
      samples: samples.subarray(from, to),
      residual: fit.residual.stretch(from, to, left),
    });
    const byTime = weights.stretch(from, to, weight);
    const volts = run(voltage, ofVoltage);
    const recorded = run(late, ofLate);
    addMeans(squares.voltage, volts, byTime);
    addMeans(squares.late, recorded, byTime);
    product += addedProduct(volts, current === late ? recorded : run(current, ofCurrent), byTime);
  }
  return {
    meanV: voltage.fit.mean + squares.voltage[0]!,
    meanA: late.fit.mean + squares.late[0]!,
    squareV: seriesProduct(voltage.fit, voltage.fit) + squares.voltage[1]!,
    squareA: seriesProduct(late.fit, late.fit) + squares.late[1]!,
    product,
  };
}

interface ChannelRun {
  readonly samples: Float64Array;
  readonly residual: Float64Array;
}

/** What the samples add to mean and mean square of the series. */
function addMeans(sums: Float64Array, { samples, residual }: ChannelRun, weights: Float64Array): void {
  let mean = 0;
  let square = 0;
  for (let i = 0; i < samples.length; i++) {
    const apart = residual[i]!;
    if (Number.isNaN(apart)) continue;
    const added = weights[i]! * apart;
    mean += added;
    // x² − (x − r)²
    square += added * (2 * samples[i]! - apart);
  }
  sums[0]! += mean;
  sums[1]! += square;
}

/** What they add to the mean product of two series. */
function addedProduct(a: ChannelRun, b: ChannelRun, weights: Float64Array): number {
  let product = 0;
  for (let i = 0; i < weights.length; i++) {
    const apart = a.residual[i]!;
    // x·y − (x − p)·(y − q)
    const added = apart * b.samples[i]! + b.residual[i]! * (a.samples[i]! - apart);
    if (!Number.isNaN(added)) product += weights[i]! * added;
  }
  return product;
}

function seriesProduct(a: HarmonicSeries, b: HarmonicSeries): number {
  let sum = a.mean * b.mean;
  for (let k = 0; k < a.cosine.length; k++)
    sum += (a.cosine[k]! * b.cosine[k]! + a.sine[k]! * b.sine[k]!) / 2;
  return sum;
}

/**
 * The basis of the powers: fundamentals from the fits; RMS values and active power in time.
 *
 * @param current - in step with the voltage.
 * @param means - those of the current as recorded: its RMS needs no timing, and interpolation would smooth its noise
 * away.
 */
export function fittedBasis(
  voltage: FittedChannel,
  current: FittedChannel,
  { squareV, squareA, product }: PowerMeans,
): PowerBasis {
  const [cosineV, sineV] = [voltage.fit.cosine[0]!, voltage.fit.sine[0]!];
  const [cosineA, sineA] = [current.fit.cosine[0]!, current.fit.sine[0]!];
  const amplitudeV = hypot(cosineV, sineV);
  const fundamentalV = amplitudeV / Math.SQRT2;
  const inPhaseA = (cosineV * cosineA + sineV * sineA) / amplitudeV / Math.SQRT2;
  const laggingA = (cosineV * sineA - sineV * cosineA) / amplitudeV / Math.SQRT2;
  return {
    fundamentalV,
    harmonicV: Math.sqrt(Math.max(0, squareV - fundamentalV ** 2)),
    inPhaseA,
    laggingA,
    harmonicA: Math.sqrt(Math.max(0, squareA - inPhaseA ** 2 - laggingA ** 2)),
    harmonicActiveW: product - fundamentalV * inPhaseA,
  };
}
