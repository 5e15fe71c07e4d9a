import { hypot } from '../base/elementary.ts';
import type { Figure } from '../base/figure.ts';
import { budgeted } from './doubt/budget.ts';
import {
  alikeWithin,
  type Component,
  contribution,
  nearEnds,
  type ScaleSource,
  scatter,
  within,
} from './doubt/component.ts';
import { cycleScatter, type Influences, influences } from './doubt/influences.ts';
import type { Instrument } from './doubt/instrument.ts';
import type { FoldedTop } from './foldedExtremes.ts';
import { bandwidthLoss, harmonicFigures } from './harmonicFigures.ts';
import type { PeriodicRecord } from './measuredWave.ts';
import { ordersOf } from './ordersOf.ts';
import { deviationFactor, zeroCrossings } from './periodicCycle.ts';
import type { PeriodicQuantities } from './periodicQuantities.ts';
import { missing } from './reasons.ts';
import { AC_COUPLED, AVERAGE_TO_RMS, type PeriodicEstimate } from './waveEstimate.ts';
import type { WaveFigures } from './waveFigures.ts';

/** Share of a volt by which the method itself may be off on band-limited waves: 0.01 %. */
const METHOD_RATIO = 1e-4;

/** A scope distorts a few low orders; all of them add up in a peak. Common practice: three, no source. */
const CREST_ORDERS = Math.sqrt(3);

/**
 * A crest factor takes the larger of peak and trough. Where no more sets them apart than what either is doubted by, they
 * may as well be of one size, and then the larger is too large by half of the difference: an offset, noise or distortion
 * of either end raises it, and none lowers it.
 *
 * @param ownDoubts - of the larger: in its own unit, the scale aside, as that moves both alike.
 */
function ofTheLarger(
  { peak, trough, rms }: PeriodicQuantities,
  hasLevels: boolean,
  ownDoubts: readonly Component[],
): Component[] {
  // The top of a smooth wave is one point, which the fit knows far better than a plateau's end is known.
  if (!hasLevels) return [];
  const half = Math.abs(peak + trough) / 2;
  // Coverage factor 2, as of every interval stated (JCGM 100:2008, 6.3.3).
  if (half > 2 * hypot(...ownDoubts.map(contribution))) return [];
  return [within('peak or trough, the larger', half, 'U', 1 / rms)];
}

/**
 * Every figure of a periodic wave with its uncertainty.
 *
 * @param scaleSource - what the volts are tied to.
 * @remarks Scale errors (gain, probe) move all voltages alike and no ratio; the time base moves frequency
 * alone; offset moves mean, peaks and what is made of them.
 */
export function periodicFigures(
  record: PeriodicEstimate,
  instrument: Instrument,
  scaleSource: ScaleSource,
): Omit<WaveFigures, 'notices'> {
  const { samples, intervalS, periodic, quantities: q } = record;
  const { fit, cycle, periodSamples } = periodic;
  const by = influences(record, q, instrument, scaleSource);
  const crest = Math.max(q.peak, -q.trough) / q.rms;
  const frequencyHz = fit.omega / (2 * Math.PI * intervalS);
  const hertzPerOmega = 1 / (2 * Math.PI * intervalS);
  const rounding = roundingShare(record, q);
  const orders = ordersOf(record, q);
  const loss = bandwidthLoss(orders, frequencyHz, instrument.bandwidthHz);
  const rmsOwn = [
    ...rmsComponents(q, by, rounding),
    alikeWithin('bandwidth', loss.rmsRatio * q.rms, 'U', 1),
    ...cycleScatter(record, q.rms),
  ];
  const inVolts = (value: number, own: readonly Component[]): Figure =>
    budgeted(value, [...by.scale(value), ...own]);
  /** What the RMS passes on to a figure that it is the denominator (−) or the numerator (+) of. */
  const perRms = (value: number): Component[] =>
    rmsComponents(q, by, rounding).map((component) => ({
      ...component,
      sensitivity: (component.sensitivity * value) / q.rms,
    }));
  // Several low orders of the scope's own add up in a peak.
  const distortedPeak = (CREST_ORDERS * Math.SQRT2 * q.fundamental) / 100;
  const { extremes } = periodic;
  const ofExtreme = (top: FoldedTop | undefined): Component[] => [
    ...(top === undefined ? [by.cycleNoise(1)] : topComponents(top, 1)),
    by.offset(1),
    by.rounding(1),
    by.distortion(distortedPeak),
  ];
  const larger = -q.trough > q.peak ? extremes?.trough : extremes?.peak;
  const form = q.rms / q.rectified;

  return {
    spanS: [record.startS, record.startS + samples.length * intervalS],
    cyclesUsed: samples.length / periodSamples,
    frequencyHz: budgeted(frequencyHz, [
      scatter('noise', periodic.unrest.noiseRatio[0]! * fit.deviation.omega, 'rad/sample', hertzPerOmega),
      scatter('what the harmonics leave', periodic.unrest.omegaDeviation, 'rad/sample', hertzPerOmega),
      by.timeBase(1e-6 * frequencyHz),
      // A round interval stands on a border of what its stamps leave open: they print ties one way or the other.
      nearEnds('coarse time stamps', 100 * (record.intervalWithin ?? 0), '%', frequencyHz / 100),
      ...ofEdges(record, q, frequencyHz, by),
    ]),
    rms: inVolts(q.rms, rmsOwn),
    mean: record.acCoupled ? AC_COUPLED : inVolts(q.mean, [by.noise(1), by.offset(1), by.rounding(1)]),
    peak: inVolts(q.peak, ofExtreme(extremes?.peak)),
    trough: inVolts(q.trough, ofExtreme(extremes?.trough)),
    max: inVolts(q.max, rawComponents(record, by)),
    min: inVolts(q.min, rawComponents(record, by)),
    crestFactor: budgeted(crest, [
      ...perRms(-crest),
      ...(larger === undefined ? [by.cycleNoise(1 / q.rms)] : topComponents(larger, 1 / q.rms)),
      // An offset lifts the peak and takes from a trough that is the larger.
      by.offset((-q.trough > q.peak ? -1 : 1) / q.rms),
      by.rounding(1 / q.rms),
      by.distortion(distortedPeak / q.rms),
      ...ofTheLarger(q, periodic.levels.length > 0, ofExtreme(larger)),
    ]),
    formFactor: budgeted(form, [
      ...perRms(form),
      // Where the wave rests at zero, |v| is the size of the noise, or of a rounded code, instead.
      scatter('noise at rest', restNoise(record), 'U', (q.restRatio * form) / q.rectified),
      by.offset((q.restRatio * form) / q.rectified),
      by.rounding(form / q.rectified),
      // Order n moves mean |v| by 1/n of itself; the scope's own come in the low odd ones.
      by.distortion((hypot(1 / 3, 1 / 5, 1 / 7) * form) / 100),
    ]),
    fundamental: inVolts(q.fundamental, [
      scatter('noise', (orders[0]!.noisePercent * q.fundamental) / 100, 'U'),
      by.rounding(rounding),
      by.edgeTime(q.edge?.stepsOfCycle ?? 0),
      within('method', METHOD_RATIO * q.fundamental, 'U', 1),
      ...cycleScatter(record, q.fundamental),
    ]),
    ...harmonicFigures(
      orders,
      q,
      instrument,
      by,
      loss,
      {
        residualDeviation: fit.residualDeviation,
        sampleCount: samples.length,
        averagedSamples: q.averagedSamples,
      },
      periodic.unrest,
    ),
    thdOrders: fit.cosine.length,
    bandwidthHz: { value: 0.5 / intervalS, uncertainty: 0 },
    deviationFactorPercent: budgeted(100 * deviationFactor(cycle, q.mean, q.acRms, 0), [
      // Several low orders add up in a peak, as for the crest factor.
      by.distortion(CREST_ORDERS),
      by.cycleNoise(100 / (Math.SQRT2 * q.acRms)),
      by.rounding(100 / (Math.SQRT2 * q.acRms)),
    ]),
    dwellPercent: timeAtZero(record, q, by),
    edgeSlope: edgeSlope(record, q, by),
    // Two noise deviations of the cycle, a hundredth of its height at the least.
    zeroCrossingsPerCycle: {
      value: zeroCrossings(
        cycle,
        Math.max(0.01 * (q.peak - q.trough), 2 * by.cycleNoise(1).standardUncertainty),
      ),
      uncertainty: 0,
    },
    averageResponding: inVolts(AVERAGE_TO_RMS * q.acRectified, [
      by.noise(AVERAGE_TO_RMS),
      by.rounding(AVERAGE_TO_RMS),
      by.edgeTime(AVERAGE_TO_RMS * (q.edge?.stepsOfCycle ?? 0)),
    ]),
    acRms: inVolts(q.acRms, rmsOwn),
  };
}

/** Share of the frequency that is in doubt where no edge of a stepped wave is seen twice. No source. */
const UNREPEATED = 0.15;

/** First and last of the edges that are alike, each off by as much, set the length of the cycles between them. */
function ofEdges(
  { periodic, samples }: PeriodicRecord,
  { edge }: PeriodicQuantities,
  frequencyHz: number,
  by: Influences,
): Component[] {
  const { periodSamples } = periodic;
  // A smooth wave may jump too, as a sine that is cut does.
  if (periodic.levels.length === 0) {
    return [by.edgeTime((Math.SQRT2 * frequencyHz * periodSamples) / samples.length)];
  }
  const repeat = edge?.repeatSamples ?? 0;
  if (repeat === 0) {
    return [
      by.edgeTime((Math.SQRT2 * frequencyHz * periodSamples) / samples.length),
      within('no edge seen twice', UNREPEATED * frequencyHz, 'Hz', 1),
    ];
  }
  // Where a series fits other parts of a short record better than its edges: each is seen to a sample.
  const cycles = Math.max(1, Math.round(repeat / periodSamples));
  const apart = Math.abs(repeat - cycles * periodSamples);
  return [
    by.edgeTime((Math.SQRT2 * frequencyHz * periodSamples) / repeat),
    within('edges that the series misses', apart > 2 ? (frequencyHz * (apart + 1)) / repeat : 0, 'Hz', 1),
  ];
}

/** Share of the cycle under which a wave without levels only crosses zero. */
const LEAST_REST = 0.05;

function timeAtZero({ periodic }: PeriodicRecord, q: PeriodicQuantities, by: Influences): Figure {
  if (periodic.levels.length > 0) return budgeted(100 * q.dwellRatio, [by.edgeTime(100 * 2)]);
  if (q.restRatio < LEAST_REST) return missing({ code: 'wave.restsNot' });
  // How near is at zero: half or twice the distance counted is up to 4 % of a cycle.
  return budgeted(100 * q.restRatio, [within('where rest begins', 4, '%', 1)]);
}

/** At rest a sample holds noise, or half a code. */
function restNoise({ periodic, stepSize }: PeriodicRecord): number {
  return Math.max(periodic.extremes?.noise ?? periodic.noise, (stepSize ?? 0) / Math.sqrt(12));
}

/** What moves an extreme that was read off the folded record. */
function topComponents(top: FoldedTop, sensitivity: number): Component[] {
  return [
    scatter('noise of the cycle', top.scatter, 'U', sensitivity),
    within('between the points of the cycle', top.betweenPoints, 'U', sensitivity),
    within('width of the smoothing', top.bySmoothing, 'U', sensitivity),
  ];
}

/** What moves the RMS besides its scale. @param rounding - of `roundingShare`. */
function rmsComponents(q: PeriodicQuantities, by: Influences, rounding: number): Component[] {
  return [
    by.noise(1),
    by.offset(q.mean / q.rms),
    { ...by.rounding(rounding), source: 'rounding in the mean square' },
    by.edgeTime((q.edge?.squareStepsOfCycle ?? 0) / (2 * q.rms)),
    within('method', METHOD_RATIO * q.rms, 'U', 1),
  ];
}

/**
 * How far a mean over the cycle follows the rounding of a level. The levels of a stepped wave are rounded each
 * by itself; a smooth wave rests where it turns, and sweeps over many codes everywhere else.
 */
function roundingShare({ periodic, stepSize }: PeriodicRecord, q: PeriodicQuantities): number {
  const { levels, cycle } = periodic;
  if (levels.length > 0) return 1 / Math.sqrt(levels.length);
  const near = (stepSize ?? 0) / 2;
  const turning = cycle.filter((v) => v > q.peak - near || v < q.trough + near).length / cycle.length;
  return (turning * Math.max(q.peak, -q.trough)) / q.rms;
}

/** What moves a raw extreme: the noise of one sample, not of a mean. */
function rawComponents({ periodic, stepSize }: PeriodicRecord, by: Influences): Component[] {
  return [
    scatter('noise of a sample', periodic.noise, 'U'),
    by.offset(1),
    within('one code', (stepSize ?? 0) / 2, 'U', 1),
  ];
}

function edgeSlope(
  { intervalS, periodic }: PeriodicRecord,
  { edge }: PeriodicQuantities,
  by: Influences,
): Figure {
  if (edge === null) {
    return missing({ code: periodic.levels.length > 0 ? 'wave.noWholeEdge' : 'wave.noEdges' });
  }
  const perMicrosecond = edge.slope / (intervalS * 1e6);
  return budgeted(perMicrosecond, [
    ...by.scale(perMicrosecond),
    within('edges between samples', 0.5, 'samples', perMicrosecond / edge.riseSamples),
  ]);
}
