import { hypot } from '../base/elementary.ts';
import type { MeasuredFigure } from '../base/figure.ts';
import { type BudgetedFigure, budgeted } from './doubt/budget.ts';
import { alikeWithin, type Component, nearEnds, scatter, within } from './doubt/component.ts';
import { coverageHalfWidth } from './doubt/coverageHalfWidth.ts';
import { type Influences, type ResidualPowerInput, residualPower } from './doubt/influences.ts';
import type { Instrument } from './doubt/instrument.ts';
import type { Unrest } from './doubt/unrest.ts';
import type { Order } from './ordersOf.ts';
import type { PeriodicQuantities } from './periodicQuantities.ts';
import type { Harmonic, WaveFigures } from './waveFigures.ts';

/** Below this many times its floor a distortion can't be told from it. */
const CLEAR_OF_FLOOR = 1.5;

/**
 * Harmonics 1 to K and the distortion made of them.
 *
 * THD = 100·√(Σ Vn², n = 2 … K) / V1; of RMS: over the RMS, taken in time, DC included;
 * THD plus noise = 100·√(RMS² − mean² − V1²) / V1
 *
 * @param orders - of `ordersOf`.
 * @param noise - what the fit leaves, and how many samples it and the RMS average over.
 * @remarks Each order holds the truth plus noise, and noise adds in power: what the fit's own variance adds is
 * taken off the sum, where the sum stands clear of it. A figure under one and a half times the floor (noise,
 * rounding, the scope's own distortion) keeps its value and gains the bound `notAbove`. The orders listed are
 * as fitted.
 */
export function harmonicFigures(
  orders: readonly Order[],
  q: PeriodicQuantities,
  instrument: Instrument,
  by: Influences,
  loss: BandwidthLoss,
  noise: Omit<ResidualPowerInput, 'fundamental'>,
  unrest: Unrest,
): Pick<WaveFigures, 'thdPercent' | 'thdOfRmsPercent' | 'thdNoisePercent' | 'harmonics'> {
  const above = orders.filter(({ order }) => order > 1);
  const sum = (part: (order: Order) => number): number =>
    above.reduce((total, order) => total + part(order), 0);

  const power = sum(({ percent }) => percent ** 2);
  // What changes from cycle to cycle adds to the power of their mean as noise does.
  const perCent = 100 / (Math.SQRT2 * q.fundamental);
  const noisePower = Math.max(
    sum(({ noisePercent }) => 2 * noisePercent ** 2),
    perCent ** 2 * unrest.shape.gained,
  );
  const roundingPower = sum(({ roundingPercent }) => roundingPercent ** 2);
  const thd = Math.sqrt(power >= CLEAR_OF_FLOOR ** 2 * noisePower ? power - noisePower : power);
  // d√Σ = Σ Vn·dVn / √Σ; at the floor all orders count alike.
  const along = (part: (order: Order) => number): number =>
    Math.sqrt(sum((order) => (order.percent * part(order)) ** 2) / Math.max(power, Number.MIN_VALUE));
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
    ...shapeComponents(unrest, perCent, thd),
    within('rounding to codes', Math.sqrt(3) * along(({ roundingPercent }) => roundingPercent), '%', 1),
    by.distortion(1),
    by.edgeTime((100 * Math.SQRT2 * (q.edge?.stepsOfCycle ?? 0)) / q.fundamental),
    alikeWithin('bandwidth', loss.thdPercent, '%', 1),
    within('method', 0.01, '%', 1),
  ];
  const floor = Math.sqrt(noisePower + roundingPower + instrument.distortionPercent ** 2);
  const highest = upperBound(above, instrument.distortionPercent);
  const ofRms = q.fundamental / q.rms;
  const thdNoise = (100 * Math.sqrt(Math.max(0, q.acRms ** 2 - q.fundamental ** 2))) / q.fundamental;
  return {
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
    thdNoisePercent: budgeted(thdNoise, [
      ...components,
      ...residualPower(thdNoise, { ...noise, fundamental: q.fundamental }),
    ]),
    harmonics: orders.map(({ order, rms, percent, phaseDeg, noisePercent, roundingPercent }) => {
      const { uncertainty } = budgeted(percent, [
        scatter('noise', noisePercent, '%'),
        within('rounding to codes', Math.sqrt(3) * roundingPercent, '%', 1),
        by.distortion(1),
        alikeWithin('bandwidth', percent * loss.orderRatio(order), '%', 1),
        within('method', 0.01, '%', 1),
      ]);
      const listed = { order, rms, percent, phaseDeg };
      if (order === 1) return listed;
      const ownFloor = hypot(Math.SQRT2 * noisePercent, roundingPercent, instrument.distortionPercent);
      const bound = upperBound([{ percent, noisePercent, roundingPercent }], instrument.distortionPercent);
      return percent >= CLEAR_OF_FLOOR * ownFloor
        ? { ...listed, uncertaintyPercent: uncertainty }
        : { ...listed, uncertaintyPercent: uncertainty, notAbovePercent: bound };
    }),
  };
}

function bounded(figure: BudgetedFigure, raw: number, floor: number, notAbove: number): MeasuredFigure {
  return raw >= CLEAR_OF_FLOOR * floor ? figure : { ...figure, notAbove };
}

const scaled = (component: Component, factor: number): Component => ({
  ...component,
  sensitivity: component.sensitivity * factor,
});

/**
 * How far the distortion of the mean cycle may be off because cycles differ: along its own direction by their scatter,
 * Student's with one degree less than cycles; or by as much as their differences could do in any direction. The
 * smaller counts: of two cycles the first says nothing, of many with a single disturbed one the second. A line out of
 * step with the fundamental is counted, and may be none of its harmonics.
 */
function shapeComponents({ shape, astray }: Unrest, perCent: number, thd: number): readonly Component[] {
  const without = Math.sqrt(Math.max(0, thd ** 2 - perCent ** 2 * astray));
  const besides =
    astray > 0 ? [nearEnds('a line out of step with the fundamental', thd - without, '%', 1)] : [];
  if (shape.length === 0) return besides;
  const source = 'cycles that differ in shape';
  const across = scatter(source, perCent * shape.length, '%');
  const along: Component = {
    ...across,
    distribution: 'student',
    standardUncertainty: perCent * shape.along,
    degreesOfFreedom: shape.degreesOfFreedom,
  };
  const lost = Math.sqrt(thd ** 2 + perCent ** 2 * shape.lost) - thd;
  return [
    ...besides,
    coverageHalfWidth([along]) < coverageHalfWidth([across]) ? along : across,
    within('what slow changes take from the mean cycle', lost, '%', 1),
  ];
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
    variance += 4 * (noisePercent ** 2) ** 2 + 4 * percent ** 2 * noisePercent ** 2;
    rounding += roundingPercent ** 2;
  }
  const truth = Math.sqrt(Math.max(0, power - noisePower) + 2 * Math.sqrt(variance));
  return truth + hypot(2 * Math.sqrt(rounding), distortionPercent);
}

/** What a low-pass takes, each ≥ 0. */
interface BandwidthLoss {
  /** Of the THD, percent points. */
  readonly thdPercent: number;
  /** Of the RMS, a ratio. */
  readonly rmsRatio: number;
  /** Of one order's share of the fundamental, a ratio. */
  orderRatio(order: number): number;
}

/**
 * What a first-order low-pass takes from a wave.
 *
 * |H(f)| = 1 / √(1 + (f/fc)²); shares of the fundamental lose what is beyond the fundamental's own loss
 *
 * @param orders - as measured, from the fundamental up.
 * @param fundamentalHz - > 0.
 * @param bandwidthHz - −3 dB of scope and probe; null: no loss.
 */
export function bandwidthLoss(
  orders: readonly Pick<Harmonic, 'order' | 'percent'>[],
  fundamentalHz: number,
  bandwidthHz: number | null,
): BandwidthLoss {
  if (bandwidthHz === null) return { thdPercent: 0, rmsRatio: 0, orderRatio: () => 0 };
  const square = (order: number): number => 1 + ((order * fundamentalHz) / bandwidthHz) ** 2;
  let [seen, whole] = [0, 0];
  for (const { order, percent } of orders) {
    if (order === 1) continue;
    seen += percent ** 2;
    whole += (percent ** 2 * square(order)) / square(1);
  }
  return {
    thdPercent: Math.sqrt(whole) - Math.sqrt(seen),
    rmsRatio: Math.sqrt((square(1) * (100 ** 2 + whole)) / (100 ** 2 + seen)) - 1,
    orderRatio: (order) => Math.sqrt(square(order) / square(1)) - 1,
  };
}
