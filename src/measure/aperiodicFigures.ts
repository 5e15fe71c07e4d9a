import { hypot } from '../base/elementary.ts';
import type { Figure } from '../base/figure.ts';
import { budgeted } from './doubt/budget.ts';
import {
  alikeWithin,
  type Component,
  type ScaleSource,
  scaleComponents,
  scatter,
  within,
} from './doubt/component.ts';
import { type Instrument, OFFSET_PERCENT_OF_RANGE } from './doubt/instrument.ts';
import { type FigureThatNeeds, figuresThatNeed } from './figures.ts';
import { AC_COUPLED, type AperiodicEstimate, nothingRepeats } from './waveEstimate.ts';
import type { WaveFigures } from './waveFigures.ts';

/** The figures of DC, noise or a voltage too brief to repeat: mean, RMS and extremes over the whole record; the rest needs a period. */
export function aperiodicFigures(
  estimate: AperiodicEstimate,
  instrument: Instrument,
  scaleSource: ScaleSource,
): WaveFigures {
  const { mean, standardDeviation, count, max, min } = estimate.moments;
  const acRms = standardDeviation * Math.sqrt((count - 1) / count);
  const offset = instrument.offsetV ?? (OFFSET_PERCENT_OF_RANGE / 100) * (max - min);
  const own: readonly Component[] = [
    scatter('noise', standardDeviation / Math.sqrt(count), 'U'),
    alikeWithin('vertical offset', offset, 'U', 1),
    within('rounding to codes', (estimate.stepSize ?? 0) / 2, 'U', 1),
  ];
  const inVolts = (value: number): Figure =>
    budgeted(value, [...scaleComponents(value, instrument, scaleSource), ...own]);
  const missing = nothingRepeats(estimate.aperiodic);
  // Over what is mostly without voltage a mean tells nothing of it.
  const isBrief = estimate.aperiodic === 'brief';
  const ofVoltage: Readonly<Record<FigureThatNeeds<'voltage'>, Figure>> = isBrief
    ? figuresThatNeed('voltage', missing)
    : { rms: inVolts(hypot(mean, acRms)), mean: inVolts(mean), acRms: inVolts(acRms) };
  return {
    spanS: [estimate.startS, estimate.startS + estimate.samples.length * estimate.intervalS],
    cyclesUsed: 0,
    max: inVolts(max),
    min: inVolts(min),
    bandwidthHz: { value: 0.5 / estimate.intervalS, uncertainty: 0 },
    ...ofVoltage,
    ...(estimate.acCoupled ? { mean: AC_COUPLED } : {}),
    ...figuresThatNeed('period', missing),
    thdOrders: 0,
    harmonics: [],
    notices: [],
  };
}
