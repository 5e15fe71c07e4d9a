import { withoutBudget } from '../../assay/channelFigures.ts';
import type { Figure } from '../../base/figure.ts';
import { budgeted } from '../../measure/doubt/budget.ts';
import { type Component, scatter } from '../../measure/doubt/component.ts';
import type { BenchPoint, Droop } from '../benchDocument.ts';
import { lacking } from '../reasons.ts';
import { byLoad } from './regulation.ts';

/**
 * Output impedance and droop from a straight line through RMS voltage over RMS current.
 *
 * The line goes through captures up to the rated load and below the load at which the tops flatten: a wave that
 * is cut falls by more than an impedance makes it fall. Points are weighted by noise and resolution alone,
 * because gain and probe are common to all captures: they scale the line and leave its shape. They come back in
 * as a factor of the impedance (squared where the current was told as a load, I = P / V).
 *
 * @param flattenedFromW - the first load with flattened tops; null: none.
 * @returns Where the points scatter about the line by more than their noise, its uncertainty grows with that
 * scatter and has the few degrees of freedom of a handful of captures.
 */
export function droop(points: readonly BenchPoint[], flattenedFromW: number | null): Droop {
  const fitted = byLoad(points).flatMap(({ point, loadW }) => {
    const { rmsV, currentA, rmsScatterV, overload, lost, loadKind } = point;
    // Pulses and currents out of step pull the voltage by more than their RMS and resistance say.
    if (loadKind !== undefined) return [];
    if (overload || lost !== undefined || (flattenedFromW !== null && loadW >= flattenedFromW)) return [];
    if (rmsV.value === null || currentA.value === null || !(rmsScatterV !== null && rmsScatterV > 0))
      return [];
    return [{ point, loadW, volts: rmsV.value, amperes: currentA.value, u: rmsScatterV / 2 }];
  });
  const fittedLoadsW = fitted.map(({ loadW }) => loadW);
  if (new Set(fitted.map(({ amperes }) => amperes)).size < 2) {
    const missing = lacking({ code: 'line.tooFew' });
    return {
      outputImpedanceOhm: missing,
      openCircuitV: missing,
      droopPercent: missing,
      fittedLoadsW,
      misfit: null,
    };
  }
  const line = straightLine(
    fitted.map(({ amperes }) => amperes),
    fitted.map(({ volts }) => volts),
    fitted.map(({ u }) => u),
  );
  const { intercept, slope } = line;
  const last = fitted.at(-1)!;
  const impedance = -slope;
  const drop = (100 * impedance * last.amperes) / intercept;
  const figure = (value: number, components: readonly Component[]): Figure =>
    withoutBudget(budgeted(value, components));
  return {
    outputImpedanceOhm: figure(impedance, [
      ofLine(line, Math.sqrt(line.slopeVariance), 'Ω'),
      ...scales(last.point, impedance),
    ]),
    openCircuitV: figure(intercept, [
      ofLine(line, Math.sqrt(line.interceptVariance), 'V'),
      scatter('gain and probe', commonRatio(last.point) / 2, '1', intercept),
    ]),
    droopPercent: figure(drop, [ofLine(line, droopDeviation(line, last.amperes), '%')]),
    fittedLoadsW,
    misfit: line.degreesOfFreedom === 0 ? null : misfitOf(line),
  };
}

/** Root of χ² over its degrees of freedom. */
function misfitOf({ chiSquare, degreesOfFreedom }: StraightLine): number {
  return Math.sqrt(chiSquare / degreesOfFreedom);
}

/** Scatter of a parameter of the line: as the weights state it, or as the points show it where that is more. */
function ofLine(line: StraightLine, deviation: number, unit: string): Component {
  const { degreesOfFreedom } = line;
  const misfit = degreesOfFreedom === 0 ? 0 : misfitOf(line);
  if (misfit <= 1) return scatter('noise and resolution', deviation, unit);
  return {
    ...scatter('scatter about the line', misfit * deviation, unit),
    distribution: 'student',
    degreesOfFreedom,
  };
}

/** Standard deviation of −100 · slope · I / intercept, the two being correlated. */
function droopDeviation(line: StraightLine, amperes: number): number {
  const { intercept, slope, slopeVariance, interceptVariance, covariance } = line;
  const bySlope = (-100 * amperes) / intercept;
  const byIntercept = (100 * slope * amperes) / intercept ** 2;
  return Math.sqrt(
    bySlope ** 2 * slopeVariance +
      byIntercept ** 2 * interceptVariance +
      2 * bySlope * byIntercept * covariance,
  );
}

/** What the scales of voltage and current do to the impedance. */
function scales(point: BenchPoint, impedance: number): Component[] {
  const { currentA, currentFrom } = point;
  const voltage = scatter('gain and probe', commonRatio(point) / 2, '1', impedance);
  if (currentFrom !== 'measured') return [{ ...voltage, sensitivity: 2 * impedance }];
  if (currentA.value === null || currentA.value === 0) return [voltage];
  return [voltage, scatter('current', currentA.uncertainty / currentA.value / 2, '1', impedance)];
}

/** Half-width of what moves all voltages of the evening alike, over the voltage. */
function commonRatio({ rmsV, rmsScatterV }: BenchPoint): number {
  if (rmsV.value === null || rmsV.value === 0) return 0;
  return Math.sqrt(Math.max(0, rmsV.uncertainty ** 2 - (rmsScatterV ?? 0) ** 2)) / rmsV.value;
}

/** The straight line y = intercept + slope · x that fits points of known scatter best. */
interface StraightLine {
  readonly intercept: number;
  readonly slope: number;
  readonly interceptVariance: number;
  readonly slopeVariance: number;
  /** Of intercept and slope; negative where the points lie on the positive side of x. */
  readonly covariance: number;
  /** Σ ((y − line) / u)²; about as large as `degreesOfFreedom` where a straight line is right. */
  readonly chiSquare: number;
  /** Points less two. */
  readonly degreesOfFreedom: number;
}

/**
 * Weighted least squares for a straight line, each point weighted by 1/u².
 *
 * About the weighted mean x̄ with W = Σ 1/u²: slope = Σ w (x − x̄) y / Σ w (x − x̄)²,
 * var slope = 1 / Σ w (x − x̄)², var intercept = 1/W + x̄² · var slope, covariance = −x̄ · var slope.
 *
 * @param x - taken as exact; at least two different values.
 * @param y - as many as x.
 * @param u - standard uncertainties of y, > 0.
 * @returns variances as the u state them, not rescaled by how well the line fits.
 * @throws RangeError where no line is determined.
 */
export function straightLine(x: readonly number[], y: readonly number[], u: readonly number[]): StraightLine {
  if (x.length !== y.length || x.length !== u.length) throw new RangeError('x, y and u differ in length');
  if (!u.every((deviation) => deviation > 0)) throw new RangeError('an uncertainty must be positive');
  const weights = u.map((deviation) => 1 / deviation ** 2);
  const sum = (of: (i: number) => number): number => weights.reduce((total, w, i) => total + w * of(i), 0);
  const weight = sum(() => 1);
  const meanX = sum((i) => x[i]!) / weight;
  const meanY = sum((i) => y[i]!) / weight;
  const spread = sum((i) => (x[i]! - meanX) ** 2);
  if (!(spread > 0)) throw new RangeError('a line needs two different x');
  const slope = sum((i) => (x[i]! - meanX) * (y[i]! - meanY)) / spread;
  const intercept = meanY - slope * meanX;
  return {
    intercept,
    slope,
    interceptVariance: 1 / weight + meanX ** 2 / spread,
    slopeVariance: 1 / spread,
    covariance: -meanX / spread,
    chiSquare: sum((i) => (y[i]! - intercept - slope * x[i]!) ** 2),
    degreesOfFreedom: x.length - 2,
  };
}
