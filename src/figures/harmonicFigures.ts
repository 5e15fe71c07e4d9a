import type { MeasuredFigure } from '../base/figure.ts';
import { bandwidthLoss } from './bandwidthLoss.ts';
import type { PeriodicRecord } from './measuredWave.ts';
import type { PeriodicQuantities } from './periodicQuantities.ts';
import { type BudgetedFigure, budgeted } from './uncertainty/budget.ts';
import { type Component, scatter, within } from './uncertainty/component.ts';
import type { Influences } from './uncertainty/influences.ts';
import type { Instrument } from './uncertainty/instrument.ts';
import { roundingLeft } from './uncertainty/roundingLeft.ts';
import type { Harmonic, WaveFigures } from './waveFigures.ts';

/** Below this many times its floor a distortion can't be told from it. */
const CLEAR_OF_FLOOR = 1.5;

/** One order with the noise that the fit leaves in it, in percent of the fundamental. */
interface Order extends Harmonic {
  /** Standard deviation of each of its two coefficients, as an RMS. */
  readonly noisePercent: number;
  /** What rounding to codes may put into it, as an RMS. */
  readonly roundingPercent: number;
}

/**
 * Harmonics 1 to K and the distortion made of them.
 *
 * THD = 100·√(Σ Vn², n = 2 … K) / V1; of RMS: over the RMS, taken in time, DC included;
 * THD plus noise = 100·√(RMS² − mean² − V1²) / V1
 *
 * @param rounding - how far a mean over the cycle follows the rounding of a level.
 * @remarks Each order holds the truth plus noise, and noise adds in power: what the fit's own variance adds is
 * taken off the sum, where the sum stands clear of it. A figure under one and a half times the floor (noise,
 * rounding, the scope's own distortion) keeps its value and gains the bound `notAbove`. The orders listed are
 * as fitted.
 */
export function harmonicFigures(
  record: PeriodicRecord,
  q: PeriodicQuantities,
  instrument: Instrument,
  by: Influences,
  rounding: number,
): Pick<WaveFigures, 'fundamental' | 'thdPercent' | 'thdOfRmsPercent' | 'thdNoisePercent' | 'harmonics'> {
  const { fit } = record.periodic;
  const orders = ordersOf(record, q);
  const above = orders.filter(({ order }) => order > 1);
  const sum = (part: (order: Order) => number): number =>
    above.reduce((total, order) => total + part(order), 0);

  const power = sum(({ percent }) => percent ** 2);
  const noisePower = sum(({ noisePercent }) => 2 * noisePercent ** 2);
  const roundingPower = sum(({ roundingPercent }) => roundingPercent ** 2);
  const thd = Math.sqrt(power >= CLEAR_OF_FLOOR ** 2 * noisePower ? power - noisePower : power);
  // d√Σ = Σ Vn·dVn / √Σ; at the floor all orders count alike.
  const along = (part: (order: Order) => number): number =>
    Math.sqrt(sum((order) => (order.percent * part(order)) ** 2) / Math.max(power, Number.MIN_VALUE));
  const hertz = fit.omega / (2 * Math.PI * record.intervalS);
  const loss = bandwidthLoss(orders, hertz, instrument.bandwidthHz);
  const components = [
    scatter(
      'noise',
      along(({ noisePercent }) => noisePercent),
      '%',
    ),
    scatter(
      'doubt about the noise taken off',
      noisePower /
        Math.max(thd, Math.sqrt(noisePower), Number.MIN_VALUE) /
        Math.sqrt(2 * Math.max(1, above.length)),
      '%',
    ),
    within('rounding to codes', Math.sqrt(3) * along(({ roundingPercent }) => roundingPercent), '%', 1),
    by.distortion(1),
    by.edgeTime((100 * Math.SQRT2 * (q.edge?.stepsOfCycle ?? 0)) / q.fundamental),
    within('bandwidth', loss.thdPercent, '%', 1),
    within('method', 0.01, '%', 1),
  ];
  const floor = Math.sqrt(noisePower + roundingPower + instrument.distortionPercent ** 2);
  const highest = upperBound(above, instrument.distortionPercent);
  const ofRms = q.fundamental / q.rms;
  const fundamentalComponents = [
    ...by.scale(q.fundamental),
    scatter('noise', (orders[0]!.noisePercent * q.fundamental) / 100, 'U'),
    by.rounding(rounding),
    by.edgeTime(q.edge?.stepsOfCycle ?? 0),
    within('method', 1e-4 * q.fundamental, 'U', 1),
  ];
  return {
    fundamental: budgeted(q.fundamental, fundamentalComponents),
    thdPercent: bounded(budgeted(thd, components), Math.sqrt(power), floor, highest),
    thdOfRmsPercent: bounded(
      budgeted(
        thd * ofRms,
        components.map((component) => scaled(component, ofRms)),
      ),
      Math.sqrt(power),
      floor,
      highest * ofRms,
    ),
    thdNoisePercent: budgeted(
      (100 * Math.sqrt(Math.max(0, q.acRms ** 2 - q.fundamental ** 2))) / q.fundamental,
      components,
    ),
    harmonics: orders.map(({ order, rms, percent, phaseDeg, noisePercent, roundingPercent }) => {
      const { uncertainty } = budgeted(percent, [
        scatter('noise', noisePercent, '%'),
        within('rounding to codes', Math.sqrt(3) * roundingPercent, '%', 1),
        by.distortion(1),
        within('method', 0.01, '%', 1),
      ]);
      const listed = { order, rms, percent, phaseDeg };
      if (order === 1) return listed;
      const ownFloor = Math.hypot(Math.SQRT2 * noisePercent, roundingPercent, instrument.distortionPercent);
      const bound = upperBound([{ percent, noisePercent, roundingPercent }], instrument.distortionPercent);
      return percent >= CLEAR_OF_FLOOR * ownFloor
        ? { ...listed, uncertaintyPercent: uncertainty }
        : { ...listed, uncertaintyPercent: uncertainty, notAbovePercent: bound };
    }),
  };
}

function ordersOf(record: PeriodicRecord, { fundamental, max, min }: PeriodicQuantities): readonly Order[] {
  const { fit, phaseRad, noise } = record.periodic;
  // The residual of a stepped wave is mostly its orders above K, which is no noise in those below.
  const noiseShare = fit.residualDeviation > 0 ? noise / fit.residualDeviation : 0;
  // Rounding a sine of amplitude A spreads q²/12 evenly over its odd orders up to about 2πA/q.
  const { stepSize } = record;
  const rounding =
    stepSize === null
      ? 0
      : roundingLeft(stepSize, noise) / Math.sqrt(3) / Math.sqrt((Math.PI * (max - min)) / 2 / stepSize);
  const percentOf = 100 / fundamental;
  return Array.from(fit.cosine, (cosine, i) => {
    const sine = fit.sine[i]!;
    const rms = Math.hypot(cosine, sine) / Math.SQRT2;
    const deviation = Math.hypot(fit.deviation.cosine[i]!, fit.deviation.sine[i]!) / 2;
    return {
      order: i + 1,
      rms,
      percent: percentOf * rms,
      phaseDeg: wrapDegrees(((Math.atan2(cosine, sine) - (i + 1) * phaseRad) * 180) / Math.PI),
      noisePercent: percentOf * deviation * noiseShare,
      roundingPercent: percentOf * rounding,
    };
  });
}

/**
 * What the root of a sum of squares may be at most, at about 97.7 % one-sided: noise taken off, two of the
 * sum's own deviations put on, then rounding and the scope's distortion.
 */
function upperBound(
  orders: readonly Pick<Order, 'percent' | 'noisePercent' | 'roundingPercent'>[],
  distortionPercent: number,
): number {
  let [power, noisePower, variance, rounding] = [0, 0, 0, 0];
  for (const { percent, noisePercent, roundingPercent } of orders) {
    power += percent ** 2;
    noisePower += 2 * noisePercent ** 2;
    variance += 4 * noisePercent ** 4 + 4 * percent ** 2 * noisePercent ** 2;
    rounding += roundingPercent ** 2;
  }
  const truth = Math.sqrt(Math.max(0, power - noisePower) + 2 * Math.sqrt(variance));
  return truth + Math.hypot(2 * Math.sqrt(rounding), distortionPercent);
}

function bounded(figure: BudgetedFigure, raw: number, floor: number, notAbove: number): MeasuredFigure {
  return raw >= CLEAR_OF_FLOOR * floor ? figure : { ...figure, notAbove };
}

const scaled = (component: Component, factor: number): Component => ({
  ...component,
  sensitivity: component.sensitivity * factor,
});

/** Into (−180, 180]. */
function wrapDegrees(degrees: number): number {
  const turned = degrees - 360 * Math.ceil((degrees - 180) / 360);
  return turned === 0 ? 0 : turned;
}
