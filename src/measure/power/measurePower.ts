import { hypot } from '../../base/elementary.ts';
import type { Figure } from '../../base/figure.ts';
import type { MeasureError } from '../../base/measureError.ts';
import type { HarmonicFit } from '../../signal/harmonicFit.ts';
import type { HarmonicSeries } from '../../signal/harmonicSeries.ts';
import { differenceNoise } from '../../signal/statistics.ts';
import { wholeCycleWeights } from '../../signal/wholeCycleWeights.ts';
import { type BudgetedFigure, budgeted } from '../doubt/budget.ts';
import { contribution, type ScaleSource } from '../doubt/component.ts';
import { ASSUMED_INSTRUMENT, type Instrument } from '../doubt/instrument.ts';
import { edges } from '../edges.ts';
import type { PeriodicWave } from '../measuredWave.ts';
import { measureError } from '../measureErrors.ts';
import type { MeasureNotice } from '../notices.ts';
import { missing } from '../reasons.ts';
import { advancedChannel, commonRecord, type MeasuredVoltage, type PowerCurrent } from './commonRecord.ts';
import {
  displacementDeg,
  type NonsinusoidalPower,
  nonsinusoidalPower,
  type PowerBasis,
} from './nonsinusoidalPower.ts';
import {
  type FittedChannel,
  type HarmonicPower,
  type PowerFigures,
  type PowerRatios,
  powerRatios,
} from './powerFigures.ts';
import { type DoubtedChannel, floorBasis, powerInfluences, propagated } from './powerInfluences.ts';
import { fittedBasis, powerMeans } from './powerMeans.ts';

/** What is known of one channel's measuring chain. */
export interface Chain {
  /** Default ASSUMED_INSTRUMENT. */
  readonly instrument?: Instrument;
  /** Default: scope and probe (for a current: and clamp). */
  readonly scaleSource?: ScaleSource;
}

export interface PowerInput {
  /** The voltage as measured: its frequency and orders are taken for both. */
  readonly voltage: MeasuredVoltage;
  /** The current of the same record; any part of it may be missing. */
  readonly current: PowerCurrent;
  /** How much later the current's chain shows an event than the voltage's, in seconds. Absent: 0, assumed. */
  readonly skewS?: number;
  /** What the skew may be off by, each way. Default TOLD_SKEW_DOUBT_S where told, else ASSUMED_SKEW_DOUBT_S. */
  readonly skewDoubtS?: number;
  readonly voltageChain?: Chain;
  readonly currentChain?: Chain;
}

/**
 * The powers of one phase, taken in time over whole cycles, each with its uncertainty.
 *
 * @throws MeasureError `power.tooShort` where voltage and current share under 1.3 periods; `power.skewTooLong`
 * where the skew told is half a period or more.
 * @throws RangeError where the two don't stand on one time base.
 * @remarks Noise of the two channels is independent, so that it leaves P without bias; it stays in V and I,
 * and so in S, N and the harmonic powers, where the uncertainty holds it.
 * @see IEEE Std 1459-2010, 3.1.2: single phase, non-sinusoidal (clause number from memory).
 */
export function measurePower(input: PowerInput): PowerFigures {
  const { voltage: measured, skewS = 0 } = input;
  const { periodic, intervalS } = measured;
  const periodS = periodic.periodSamples * intervalS;
  if (!(Math.abs(skewS) < periodS / 2)) throw skewTooLong(skewS, periodS);
  const { voltage, current: late, startS } = commonRecord(measured, input.current);
  const current = advancedChannel(late, skewS / intervalS);
  const weights = wholeCycleWeights(voltage.samples.length, periodic.periodSamples);
  const means = powerMeans(voltage, current, late, weights);
  const basis = fittedBasis(voltage, current, means);
  const harmonics = harmonicPowers(voltage.fit, current.fit);
  const cycles = voltage.samples.length / periodic.periodSamples;
  const omegaPerS = (2 * Math.PI) / periodS;
  const skewDoubtS =
    input.skewDoubtS ?? (input.skewS === undefined ? ASSUMED_SKEW_DOUBT_S : TOLD_SKEW_DOUBT_S);
  const channels = {
    basis,
    voltage: doubted(voltage, means.meanV, periodic.noise, input.voltageChain),
    current: doubted(late, means.meanA, currentNoise(late), input.currentChain),
    averagedSamples: weights.averagedSamples,
    skewDoubtS,
    omegaPerS,
  };
  const influences = powerInfluences({
    ...channels,
    // dPk/dτ = k·ω·Qk
    harmonicWPerS: harmonics
      .slice(1)
      .reduce((sum, { order, reactiveVar }) => sum + order * omegaPerS * reactiveVar, 0),
    edgePercent: edgePercent(voltage, periodic, basis),
  });
  const budget = (of: (basis: PowerBasis) => number): BudgetedFigure =>
    budgeted(of(basis), propagated(basis, influences, of));
  const power = (key: keyof NonsinusoidalPower): BudgetedFigure =>
    budget((at) => nonsinusoidalPower(at)[key]);
  const floor = floorBasis(channels);
  /** A root of squares, which no error of the chain can bring below nothing: near its floor it is a bound. */
  const bounded = (figure: BudgetedFigure, atFloor: number): BudgetedFigure =>
    figure.value >= CLEAR_OF_FLOOR * atFloor
      ? figure
      : { ...figure, notAbove: figure.value + figure.uncertainty };
  const distortion = (key: keyof NonsinusoidalPower): BudgetedFigure =>
    bounded(power(key), nonsinusoidalPower(floor)[key]);
  const hasFundamental = isHeard(late.fit);
  const ofFundamental = (of: (basis: PowerBasis) => number): Figure =>
    hasFundamental ? budget(of) : missing({ code: 'current.noFundamental' });
  const ratio = (key: keyof PowerRatios): Figure => ofFundamental((at) => powerRatios(at)[key]);
  const pollution = ratio('harmonicPollutionPercent');
  const activeW = power('activeW');
  return {
    spanS: [startS, startS + voltage.samples.length * intervalS],
    cyclesUsed: cycles,
    activeW,
    apparentVA: power('apparentVA'),
    nonactiveVar: distortion('nonactiveVar'),
    powerFactor: ratio('powerFactor'),
    displacementPowerFactor: ratio('displacementPowerFactor'),
    displacementDeg: ofFundamental((at) => displacementDeg(at, basis)),
    fundamentalApparentVA: power('fundamentalApparentVA'),
    fundamentalActiveW: power('fundamentalActiveW'),
    fundamentalReactiveVar: power('fundamentalReactiveVar'),
    nonfundamentalApparentVA: distortion('nonfundamentalApparentVA'),
    currentDistortionVar: distortion('currentDistortionVar'),
    voltageDistortionVar: distortion('voltageDistortionVar'),
    harmonicApparentVA: distortion('harmonicApparentVA'),
    harmonicActiveW: power('harmonicActiveW'),
    harmonicDistortionVar: distortion('harmonicDistortionVar'),
    harmonicPollutionPercent:
      pollution.value === null
        ? pollution
        : bounded(pollution as BudgetedFigure, powerRatios(floor).harmonicPollutionPercent),
    harmonics,
    notices: powerNotices(activeW, skewDoubtS),
  };
}

/** Below this many times its floor a figure can't be told from it. */
const CLEAR_OF_FLOOR = 1.5;

function skewTooLong(skewS: number, periodS: number): MeasureError {
  return measureError('power.skewTooLong', { skewS, mostS: periodS / 2 });
}

function doubted(
  { samples }: FittedChannel,
  mean: number,
  noise: number,
  { instrument = ASSUMED_INSTRUMENT, scaleSource = 'scope and probe' }: Chain = {},
): DoubtedChannel {
  return { samples, mean, noise, instrument, scaleSource };
}

/** The residual of a current with edges is mostly its orders above those fitted, which is no noise. */
function currentNoise({ samples, fit }: FittedChannel): number {
  return Math.min(fit.residualDeviation, differenceNoise(samples));
}

/** Four of its own standard deviations (one chance in some thousand), and more than the rounding of a constant. */
function isHeard({ mean, cosine, sine, deviation }: HarmonicFit): boolean {
  const floor = hypot(4 * deviation.cosine[0]!, 4 * deviation.sine[0]!, 1e-9 * mean);
  return hypot(cosine[0]!, sine[0]!) > floor;
}

/**
 * What the RMS may be off by where edges fall between samples: half an interval each way.
 *
 * @returns % of the RMS; 0 for a smooth wave, and for edges that several samples see.
 */
function edgePercent({ samples }: FittedChannel, periodic: PeriodicWave, basis: PowerBasis): number {
  const { levels, periodSamples } = periodic;
  const edge = levels.length > 0 ? edges(samples, levels, samples.length / periodSamples) : null;
  if (edge === null || edge.riseSamples >= 3) return 0;
  const squareV = basis.fundamentalV ** 2 + basis.harmonicV ** 2;
  return (100 * (0.5 / periodSamples) * edge.squareStepsOfCycle) / (2 * squareV);
}

/**
 * Active and reactive power of each order: Pk = Vk·Ik·cos θk, Qk = Vk·Ik·sin θk.
 *
 * @param voltage - K orders.
 * @param current - K orders at the same frequency.
 */
function harmonicPowers(voltage: HarmonicSeries, current: HarmonicSeries): HarmonicPower[] {
  return Array.from(voltage.cosine, (cosine, k) => {
    const sine = voltage.sine[k]!;
    return {
      order: k + 1,
      activeW: (cosine * current.cosine[k]! + sine * current.sine[k]!) / 2,
      reactiveVar: (cosine * current.sine[k]! - sine * current.cosine[k]!) / 2,
    };
  });
}

/**
 * How far probe and clamp may be apart in time where nobody says, in seconds each way. A first-order clamp
 * of 20 kHz, the slowest worth putting on a scope, is 1 / (2π · 20 kHz) = 8 µs late. Common practice, no source.
 */
const ASSUMED_SKEW_DOUBT_S = 10e-6;

/** The same where the skew was told, as read off a resistive load. Common practice, no source. */
export const TOLD_SKEW_DOUBT_S = 1e-6;

/** What to doubt about a power, and what to do about it. */
function powerNotices(activeW: BudgetedFigure, skewDoubtS: number): MeasureNotice[] {
  const notices: MeasureNotice[] = [];
  const size = Math.abs(activeW.value);
  if (activeW.value < -activeW.uncertainty) {
    notices.push({ code: 'power.negative', activeW: activeW.value });
  }
  const skew = activeW.budget.components.find(({ unit }) => unit === 's');
  const skewW = skew === undefined ? 0 : Math.sqrt(3) * contribution(skew);
  if (skewW > 0.01 * size && skewW > 0.5 * activeW.uncertainty) {
    notices.push({ code: 'power.skew', doubtS: skewDoubtS, doubtW: skewW });
  }
  return notices;
}
